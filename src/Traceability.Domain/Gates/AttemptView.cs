using Traceability.Domain.Records;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Gates;

/// <summary>An attempt with everything that belongs to it.</summary>
public sealed record AttemptView(
    Attempt Attempt,
    AttemptEnding? Ending,
    IReadOnlyList<InstrumentUse> Instruments,
    IReadOnlyList<ReadingView> Readings,
    IReadOnlyList<Fitting> Fittings,
    IReadOnlyList<EvidenceRecord> Evidence
)
{
    /// <summary>The attempt's id.</summary>
    public Guid Id => Attempt.Id;

    /// <summary>The stage it belongs to.</summary>
    public string Stage => Attempt.Stage;

    /// <summary>True when it was closed (not abandoned).</summary>
    public bool Closed => Ending is { Abandoned: false };

    /// <summary>
    /// True when it was closed and, with all corrections taken into account, every reading is met and no finding failed it.
    /// </summary>
    public bool Passed => Ending is { Abandoned: false, FailedByFinding: false } && Readings.All(r => r.Met);

    /// <summary>The verdict with all corrections taken into account; null while it is open, and when it was abandoned.</summary>
    public Verdict? Verdict => !Closed ? null : VerdictOf(Ending!.FailedByFinding, Readings);

    /// <summary>The verdict on an attempt: one thing not met fails it, one value not shown to conform makes it conditional.</summary>
    public static Verdict VerdictOf(bool failedByFinding, IEnumerable<ReadingView> readings)
    {
        var unmet = readings.Where(r => !r.Met).ToList();
        return failedByFinding || unmet.Exists(r => r.Conformity == Conformity.NotMet) ? Records.Verdict.Fail
            : unmet.Count > 0 ? Records.Verdict.Conditional
            : Records.Verdict.Pass;
    }

    /// <summary>The moment from which waits and windows of later stages count; null while it is open.</summary>
    public DateTimeOffset? CountsFrom => Ending?.CountsFrom ?? Ending?.OccurredAt;

    /// <summary>True when the person worked on it: began it, ended it, measured, fitted or attached something.</summary>
    public bool WorkedOnBy(Guid person) =>
        Attempt.By == person
        || Ending?.By == person
        || Readings.Any(r => r.Reading.By == person)
        || Fittings.Any(f => f.By == person)
        || Evidence.Any(e => e.By == person);

    /// <summary>
    /// True when the person put another value in the place of one that was taken in it; what was computed anew from that does not count.
    /// </summary>
    public bool CorrectedBy(Guid person) =>
        Readings.Any(r => r.Reading.Source != ReadingSource.Computed && r.Corrections.Any(c => c.By == person));

    /// <summary>The reading of a characteristic, if it was taken.</summary>
    public ReadingView? Reading(string characteristic) => Readings.FirstOrDefault(r => r.Reading.Characteristic == characteristic);

    /// <summary>
    /// All attempts found in a part's facts, oldest first. A log that was sent for a load when the part was out of it already is no
    /// evidence of this part.
    /// </summary>
    public static IReadOnlyList<AttemptView> AllOf(IReadOnlyList<Fact> facts)
    {
        var endings = facts.OfType<AttemptEnding>().ToDictionary(e => e.AttemptId);
        var uses = facts.OfType<InstrumentUse>().ToLookup(u => u.AttemptId);
        var corrections = facts.OfType<Correction>().ToLookup(c => c.ReadingId);
        var readings = facts.OfType<Reading>().ToLookup(r => r.AttemptId, r => new ReadingView(r, [.. corrections[r.Id]]));
        var fittings = facts.OfType<Fitting>().ToLookup(f => f.AttemptId);
        var evidence = facts.OfType<EvidenceRecord>().ToList();
        return
        [
            .. facts
                .OfType<Attempt>()
                .Select(a => new AttemptView(
                    a,
                    endings.GetValueOrDefault(a.Id),
                    [.. uses[a.Id]],
                    [.. readings[a.Id]],
                    [.. fittings[a.Id]],
                    [.. evidence.Where(e => e.AttemptId == a.Id || IsOfItsLoad(e, a, endings.GetValueOrDefault(a.Id)))]
                )),
        ];
    }

    private static bool IsOfItsLoad(EvidenceRecord file, Attempt attempt, AttemptEnding? ending) =>
        attempt.LoadId is { } load && file.LoadId == load && !(file.RecordedAt > ending?.RecordedAt);
}

/// <summary>A reading with its corrections; the latest correction counts.</summary>
public sealed record ReadingView(Reading Reading, IReadOnlyList<Correction> Corrections)
{
    /// <summary>The value that counts.</summary>
    public decimal Value => Corrections.Count > 0 ? Corrections[^1].Value : Reading.Value;

    /// <summary>The digits that count, as entered.</summary>
    public string Digits => Corrections.Count > 0 ? Corrections[^1].Digits : Reading.Digits;

    /// <summary>True when what counts is only a bound from below (">400"): never averaged, trended or reckoned with as a number.</summary>
    public bool IsLowerBound => Digits.StartsWith('>');

    /// <summary>True when the value that counts lies within its limits.</summary>
    public bool Met => Corrections.Count > 0 ? Corrections[^1].Met : Reading.Met;

    /// <summary>The limits, the uncertainty and the rule that judged it.</summary>
    public Acceptance Acceptance => new(Reading.Lower, Reading.Upper, Reading.ExpandedUncertainty, Reading.Guarded is true);

    /// <summary>What the limits, the uncertainty and the rule say of the value that counts.</summary>
    public Conformity Conformity =>
        Met ? Conformity.Met
        : Acceptance.Judge(Value) == Conformity.Conditional ? Conformity.Conditional
        : Conformity.NotMet;

    /// <summary>The probability that the true value lies inside the limits; null when no uncertainty is stated.</summary>
    public double? ProbabilityOfConformance => Acceptance.ProbabilityOfConformance(Value);
}
