using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>
/// Judges a soak from its logger's file, never from a tick: each phase of the route must show its dwell inside tolerance, in order.
/// Gives <c>{phase}DwellMinutes</c> for every phase and, where the route asks for them, <c>{phase}RampKPerMinute</c>,
/// <c>{phase}ExcursionMinutes</c> and <c>{phase}DewMarginK</c>.
/// </summary>
/// <remarks>
/// Only lines between the opening and this part's closing count: what the cabinet did before or afterwards was not done to the part. A log
/// without a line in that time belongs to another run, or its clock is wrong. The moment from which later waits and windows count is the
/// last line inside the tolerance of the last phase: from there on nobody knows in what climate the part was. Phases
/// are cut out of the log by <see cref="SoakProgramme"/>. A soak at 95 % and above is no test of the IEC
/// 60068 series with steady humidity (93 % at most, and no condensation: IEC 60068-2-78, from memory), so its tolerances must be named as
/// the workshop's own. Checks: <c>SoakConformityTests</c>, <c>SoakMethodTests</c>.
/// </remarks>
public sealed class SoakFromLog : StageMethod
{
    private static readonly CondensationWatch Unseen = new(null, null, []);
    private const decimal SaturatedFromPct = 95;

    private static readonly Dictionary<string, string> Explained = new()
    {
        ["DwellMinutes"] =
            "Minutes from the first line of the log that is in tolerance, with the part within 3 K of the set temperature, to the last"
            + " one before it leaves tolerance; an excursion, or a gap longer than the route allows, starts the count anew. Humidity is"
            + " looked at only while the temperature is in tolerance. Way of counting of IEC 60068-2-1, -2-2 and -2-78, from memory.",
        ["RampKPerMinute"] =
            "max |T(t + w) - T(t)| / w in K/min, w the window of at most 5 min, the log straight between its lines. Averaging of IEC"
            + " 60068-2-1 and -2-2, from memory.",
        ["ExcursionMinutes"] =
            "Longest time, min, from a line in tolerance to the next one in tolerance with lines outside or a gap between: what the log"
            + " cannot exclude. The workshop's own way of counting.",
        ["DewMarginK"] =
            "Least temperature of the part less dew point of the air, K; at or below 0 water condenses. Dew point 243.12 x/(17.62 - x),"
            + " x = ln(RH/100) + 17.62 t/(243.12 + t) (Magnus, WMO-No. 8); the part follows the air with its time constant through the"
            + " whole log; only the lines of this phase count, its change of climate included.",
    };

    /// <inheritdoc/>
    public override string Name => "climate-soak";

    /// <inheritdoc/>
    public override int Version => 4;

    /// <inheritdoc/>
    public override bool JudgesALog => true;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "A climate soak is judged from its logger's file: each phase must show its dwell inside tolerance, in order. The stage needs a"
                + " climate-log and says where its tolerances come from (toleranceSource). Names begin with that of the phase.",
            [],
            0,
            [
                new("{phase}DwellMinutes", "min") { Required = true },
                new("{phase}RampKPerMinute", "K/min"),
                new("{phase}ExcursionMinutes", "min"),
                new("{phase}DewMarginK", "K"),
            ],
            [EvidenceKind.ClimateLog],
            [
                "Way of counting: IEC 60068-2-1, -2-2 and -2-78, from memory.",
                "Dew point: Magnus formula, WMO-No. 8.",
                "Excursions: the workshop's own way of counting.",
            ]
        );

    /// <inheritdoc/>
    public override IReadOnlyList<MethodParameter> Parameters { get; } =
    [
        new(
            "phases",
            null,
            "The phases in order: name, temperature (°C) with tolerance (K), humidity (% RH) with tolerance, least dwell (min),"
                + " and where it is"
                + " judged the fastest ramp (K/min), the longest gap of the log (min), the time constant of the part (min)."
        )
        {
            Required = true,
        },
    ];

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        Explained.FirstOrDefault(e => characteristic.EndsWith(e.Key, StringComparison.Ordinal)).Value;

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage)
    {
        if (stage.Parameters.Phases is not { Count: > 0 } phases)
        {
            return [SoakTexts.SoakNeedsPhases];
        }

        var evidence = stage.Evidence.Any(e => e.Kind == EvidenceKind.ClimateLog.Code() && e.Required)
            ? []
            : new[] { SoakTexts.SoakNeedsItsLog };
        var source = stage.Parameters.ToleranceSource is null ? [SoakTexts.SoakNeedsToleranceSource] : Array.Empty<string>();
        return
        [
            .. evidence,
            .. source,
            .. phases.Select(p => ProblemWith(p, stage)).OfType<string>(),
            .. NeedsComputed(stage, phases.Select(DwellOf)),
            .. ComputesNoOther(stage),
        ];
    }

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        var file = input.Evidence.Last(e => e.Kind == EvidenceKind.ClimateLog.Code());
        var log = ClimateLogFile.Read(file.Bytes);
        if (!log.IsGood)
        {
            return StageOutcome.CannotJudge(SoakTexts.ClimateLogCannotBeRead(string.Join("; ", log.Problems)));
        }

        var rows = log.Data.Rows;
        var samples = SamplesBetween(rows, input.OpenedAt, input.ClosedAt);
        if (samples.Count == 0)
        {
            return StageOutcome.CannotJudge(SoakTexts.LogBelongsToAnotherRun(rows[0].At, rows[^1].At, input.OpenedAt, input.ClosedAt));
        }

        var phases = input.Stage.Parameters.Phases!;
        var results = SoakProgramme.Judge(samples, [.. phases.Select(PhaseOf)]);
        var usable = ClimateLogCheck.Of(samples);
        if (usable.Problem is { } problem)
        {
            return StageOutcome.CannotJudge(SoakTexts.ClimateLogCannotBeJudged(problem));
        }

        var values = new List<ComputedValue?>();
        var findings = log.Notes.Select(n => new StageFinding(n, false)).ToList();
        if (samples.Count < rows.Count)
        {
            findings.Add(new(SoakTexts.OnlyTheRunCounts(input.OpenedAt, input.ClosedAt, samples.Count, rows.Count), false));
        }
        foreach (var (phase, result) in phases.Zip(results))
        {
            var dew = result.From is null
                ? Unseen
                : CondensationWatch.Along(
                    usable.Usable,
                    (double?)phase.PartTimeConstantMinutes,
                    result.From == usable.Usable[0].At ? null : result.From,
                    result.Until
                );
            values.AddRange(Values(phase, result, dew, file.Id));
            findings.AddRange(result.Findings.Select(f => new StageFinding($"{phase.Name}: {f}", result.Verdict != SoakVerdict.Conforms)));
            findings.AddRange(WetSpells(phase, result, dew));
        }

        return new(Wanted(input.Stage, values), findings)
        {
            CountsFrom = results[^1].LastInToleranceAt is { } last ? ToTheMicrosecond(last) : null,
        };
    }

    /// <summary>
    /// The lines of a log that say something about a part that was in the cabinet from its opening to its closing; both ends belong to it.
    /// Loggers write whole seconds: a line of the second in which the part went in belongs to it too.
    /// </summary>
    /// <param name="rows">The whole log.</param>
    /// <param name="openedAt">When the part's attempt was opened.</param>
    /// <param name="closedAt">When it was closed; null while it is open.</param>
    public static IReadOnlyList<ClimateSample> SamplesBetween(
        IEnumerable<ClimateLogRow> rows,
        DateTimeOffset openedAt,
        DateTimeOffset? closedAt
    ) =>
        [
            .. rows.Where(r => r.At >= ToTheSecond(openedAt) && !(r.At > closedAt))
                .Select(r => new ClimateSample(r.At, r.TemperatureC, r.HumidityPct)),
        ];

    /// <summary>A phase as the route states it.</summary>
    public static SoakPhase PhaseOf(SoakPhaseParameters p) =>
        new(
            p.Name,
            (double)p.TemperatureC,
            (double)p.TemperatureToleranceK,
            (double?)p.HumidityPct,
            (double?)p.HumidityTolerancePct,
            p.MinDwellMinutes,
            (double?)p.MaxRampKPerMinute,
            p.MaxGapMinutes,
            (double?)p.PartTimeConstantMinutes,
            (double?)p.RampWindowMinutes ?? 5,
            p.ExcursionsAreSubtracted ? ExcursionRule.IsSubtracted : ExcursionRule.RestartsTheDwell
        );

    private static ComputedValue?[] Values(SoakPhaseParameters phase, SoakResult result, CondensationWatch dew, Guid evidence) =>
        [
            ComputedValue.Of(DwellOf(phase), result.DwellMinutes, 1, evidence),
            ComputedValue.Of($"{phase.Name}RampKPerMinute", result.MaxRampKPerMinute, 2, evidence),
            ComputedValue.Of($"{phase.Name}ExcursionMinutes", result.LongestExcursionMinutes, 1, evidence),
            ComputedValue.Of($"{phase.Name}DewMarginK", dew.LeastMarginK, 1, evidence),
        ];

    private static IEnumerable<StageFinding> WetSpells(SoakPhaseParameters phase, SoakResult result, CondensationWatch dew) =>
        phase is { HumidityPct: null, MustStayDry: false }
            ? []
            : dew.Wet.Select(w => new StageFinding(
                SoakTexts.WaterCondensed(phase.Name, SoakWords.Time(w.From), SoakWords.Time(w.Until), When(w, result)),
                phase.MustStayDry
            ));

    private static string When(WetSpell wet, SoakResult result) =>
        result.StabilisedAt is not { } stable || wet.Until < stable ? SoakTexts.WhileTheClimateChanged
        : wet.From >= stable ? SoakTexts.DuringTheDwell
        : SoakTexts.WhileTheClimateChangedAndIntoTheDwell;

    private static string? ProblemWith(SoakPhaseParameters phase, Stage stage)
    {
        if (
            phase.HumidityPct >= SaturatedFromPct
            && stage.Parameters.ToleranceSource?.Contains("workshop", StringComparison.OrdinalIgnoreCase) == false
        )
        {
            return SoakTexts.SaturatedPhaseIsTheWorkshopsOwn(phase.Name);
        }

        try
        {
            PhaseOf(phase).Check();
            return null;
        }
        catch (ArgumentOutOfRangeException wrong)
        {
            return SoakTexts.PhaseOfCannotBe(phase.Name, wrong.ParamName, wrong.ActualValue);
        }
    }

    private static DateTimeOffset ToTheSecond(DateTimeOffset at) => at.AddTicks(-(at.Ticks % TimeSpan.TicksPerSecond));

    /// <summary>UTC, as fine as it is stored.</summary>
    private static DateTimeOffset ToTheMicrosecond(DateTimeOffset at) =>
        new(at.UtcTicks - at.UtcTicks % TimeSpan.TicksPerMicrosecond, TimeSpan.Zero);

    private static string DwellOf(SoakPhaseParameters phase) => $"{phase.Name}DwellMinutes";
}
