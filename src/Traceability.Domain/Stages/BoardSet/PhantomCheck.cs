using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.BoardSet;

/// <summary>
/// Electrical check on phantom power, of boards and of the finished unit: the current that the tester shows against that which the voltage
/// at the input tells, and what is left to the greatest allowed current. Boards of a panel lot may be sampled.
/// </summary>
/// <remarks>
/// Reads <c>phantomSourceV</c> and <c>phantomTerminalV</c> beside the one entered current in mA. With the number
/// <c>samplingQualityLimitPct</c> the stage also reads <c>boardNumberInLot</c>; characteristics that may be left open are then required of
/// the boards in the sample (<see cref="SampleOfLot"/>). 48 V supply: <see cref="PhantomSupply.P48"/>. Checks: published values E14, F13;
/// <c>BoardMethodTests</c>.
/// </remarks>
public sealed class PhantomCheck : StageMethod
{
    private const string Source = "phantomSourceV";
    private const string Terminal = "phantomTerminalV";
    private const string ByVoltage = "currentByVoltageMa";
    private const string Agreement = "currentAgreementMa";
    private const string Margin = "phantomMarginMa";
    private const string QualityLimit = "samplingQualityLimitPct";

    /// <summary>The characteristic that says which board of its lot it is.</summary>
    public const string BoardNumber = "boardNumberInLot";

    /// <summary>The acceptance quality limit of a stage that samples, % nonconforming; null for another stage.</summary>
    public static double? SamplingLimitOf(Stage stage)
    {
        ArgumentNullException.ThrowIfNull(stage);
        return stage.Parameters.Numbers.TryGetValue(QualityLimit, out var limit) ? (double)limit : null;
    }

    /// <inheritdoc/>
    public override string Name => "phantom-check";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "Electrical check on phantom power, of boards and of the finished unit: the current that the tester shows against the"
                + " one that the"
                + " voltage at the input tells, and what is left to the greatest allowed current. The stage has one entered current in mA."
                + " Boards of a panel lot may be sampled.",
            [Source, Terminal, BoardNumber],
            2,
            [new(ByVoltage, "mA"), new(Agreement, "mA"), new(Margin, "mA")],
            [],
            ["Phantom supply: IEC 61938, from memory.", "Sampling: ISO 2859-1:1999, tables 1 and 2-A."]
        );

    /// <inheritdoc/>
    public override IReadOnlyList<MethodParameter> Parameters { get; } =
    [
        new(
            QualityLimit,
            "%",
            "Acceptance quality limit of a panel lot that is sampled: one of "
                + string.Join(", ", SamplingPlan.Limits.Select(l => l.ToString(System.Globalization.CultureInfo.InvariantCulture)))
                + ". Every board is measured when not stated."
        ),
    ];

    /// <inheritdoc/>
    public override bool ReadsInside => true;

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        characteristic switch
        {
            ByVoltage => "(V - U) / 3400 Ohm, in mA: V the supply without load (phantomSourceV), U the voltage at the microphone"
                + " (phantomTerminalV), two resistors of 6.8 kOhm in parallel. IEC 61938, from memory.",
            Agreement =>
                "The current that the tester shows less (V - U) / 3400 Ohm, in mA. Far from zero one of the three readings is wrong."
                    + " Source: Ohm's law; resistors of IEC 61938, from memory.",
            Margin => "10 mA less the current that the tester shows: the greatest current of a microphone on 48 V. IEC 61938, from memory.",
            _ => null,
        };

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
        [
            .. NeedsEntered(stage, Source, Terminal),
            .. CurrentOf(stage) is null ? [BoardTexts.MethodReadsTheCurrent] : Array.Empty<string>(),
            .. stage.Parameters.Numbers.TryGetValue(QualityLimit, out var limit)
                ? NeedsEntered(stage, BoardNumber)
                    .Concat(
                        SamplingPlan.Limits.Contains((double)limit)
                            ? []
                            : [BoardTexts.QualityLimitIsNotInTheTable(QualityLimit, limit, string.Join(", ", SamplingPlan.Limits))]
                    )
                : [],
            .. ComputesNoOther(stage),
        ];

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        var (source, terminal, current) = (input.Entered[Source], input.Entered[Terminal], input.Entered[CurrentOf(input.Stage)!.Name]);
        if (source <= 0 || terminal < 0 || current < 0)
        {
            return StageOutcome.CannotJudge(BoardTexts.SupplyCannotBe(source, terminal, current));
        }

        if (terminal > source)
        {
            return StageOutcome.CannotJudge(BoardTexts.TerminalIsAboveSupply(terminal, source));
        }

        var (findings, missing) = Sampled(input);
        if (missing is not null)
        {
            return StageOutcome.CannotJudge(missing);
        }

        var byVoltage = PhantomSupply.P48.CurrentA((double)terminal, (double)source) * 1000;
        return new(
            Wanted(
                input.Stage,
                ComputedValue.Of(ByVoltage, byVoltage, 2),
                ComputedValue.Of(Agreement, (double)current - byVoltage, 2),
                ComputedValue.Of(Margin, PhantomSupply.P48.MaxCurrentA * 1000 - (double)current, 2)
            ),
            findings
        );
    }

    private static (List<StageFinding> Findings, string? Missing) Sampled(StageInput input)
    {
        if (input.Number(QualityLimit) is not { } limit)
        {
            return ([], null);
        }

        var board = input.Entered[BoardNumber];
        if (board < 1 || board != Math.Floor(board) || board > int.MaxValue)
        {
            return ([], BoardTexts.BoardNumberCannotBe(board));
        }

        var lot = input.Inside.Values.OfType<FittedLot>().Select(l => l.Lot).FirstOrDefault();
        var sample = lot is null ? null : SampleOfLot.Of(lot, (int)board, (double)limit);
        var open = input
            .Stage.Characteristics.Where(c => c is { Entered: true, Required: false } && input.Value(c.Name) is null)
            .Select(c => c.Label)
            .ToList();
        return open.Count > 0 && sample?.Contains != false
            ? (
                [],
                sample is null
                    ? BoardTexts.BoardStillNeeds(string.Join(", ", open))
                    : BoardTexts.SampleStillNeeds(sample.InWords(lot!.Number), string.Join(", ", open))
            )
            : ([new(sample?.InWords(lot!.Number) ?? BoardTexts.NoPanelLotOfKnownSizeIsFitted, false)], null);
    }

    private static Characteristic? CurrentOf(Stage stage) =>
        stage.Characteristics.FirstOrDefault(c => c is { Entered: true, Required: true, Unit: "mA" });
}
