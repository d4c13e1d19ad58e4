using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// Gluing the ring: how much of the adhesive's pot life is left. Time since mixing is what the builder says, or the lot's own clock when
/// the lot states when it was mixed, whichever is longer.
/// </summary>
/// <remarks>
/// Entered: <c>minutesSinceMixing</c>. The pot life is the lot's, else the route number <c>potLifeMinutes</c>. The clock runs to the start
/// of the attempt: people close it late. No source needed. Checks: <c>BondAndCureTests</c>.
/// </remarks>
public sealed class AdhesiveBond : StageMethod
{
    private const string SinceMixing = "minutesSinceMixing";
    private const string Left = "potLifeLeftMinutes";
    private const string PotLife = "potLifeMinutes";

    /// <summary>A builder rounds; beyond this the two clocks are at odds. Common practice, no source.</summary>
    private const decimal AtOddsMinutes = 5;

    /// <inheritdoc/>
    public override string Name => "bond";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "Gluing the ring: how much of the adhesive's pot life is left. The time since mixing is what the builder says, or the lot's own"
                + " clock, whichever is longer. The stage needs a slot for the lot of adhesive.",
            [SinceMixing],
            1,
            [new(Left, "min") { Required = true }],
            [],
            ["The workshop's own rule; the pot life is the supplier's."]
        );

    /// <inheritdoc/>
    public override IReadOnlyList<MethodParameter> Parameters { get; } =
    [new(PotLife, "min", "Pot life when the lot of adhesive states none; needed when the time left is required.")];

    /// <inheritdoc/>
    public override bool ReadsInside => true;

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
        [
            .. NeedsEntered(stage, SinceMixing),
            .. NeedsComputed(stage, Left),
            .. ComputesNoOther(stage),
            .. stage.Slots.Any(s => s.LotKind is not null) ? [] : new[] { TensionTexts.MethodReadsTheAdhesiveLot },
            .. stage.Characteristic(Left) is { Required: true } ? NeedsNumbers(stage, PotLife) : [],
        ];

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        characteristic == Left
            ? "pot life (of the adhesive lot, else of the route) less the time since mixing: as entered, or by the lot's own clock at"
                + " the start of the attempt, whichever is longer. The workshop's own rule; the pot life is the supplier's."
            : null;

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        var entered = input.Entered[SinceMixing];
        if (entered < 0)
        {
            return StageOutcome.CannotJudge(TensionTexts.MinutesSinceMixingCannotBe(entered));
        }

        var lots = input.Inside.Values.OfType<FittedLot>().Where(l => input.Stage.Slot(l.Position) is not null).Select(l => l.Lot).ToList();
        var adhesive = lots.Find(l => l.MixedAt is not null) ?? lots.Find(l => l.PotLifeMinutes is not null);
        var byClock =
            adhesive?.MixedAt is { } mixed && mixed <= input.OpenedAt
                ? Math.Floor((decimal)(input.OpenedAt - mixed).TotalMinutes)
                : (decimal?)null;
        var potLife = adhesive?.PotLifeMinutes ?? input.Number(PotLife);
        return Outcome(
            input.Stage,
            [ComputedValue.Of(Left, (double?)(potLife - Math.Max(entered, byClock ?? 0)), 0)],
            byClock is { } clock && Math.Abs(clock - entered) > AtOddsMinutes ? [AtOdds(adhesive!, entered, clock)] : []
        );
    }

    private static StageFinding AtOdds(Lot adhesive, decimal entered, decimal byClock) =>
        new(TensionTexts.ClockOfTheLotCounts(entered, adhesive.Number, byClock), false);
}
