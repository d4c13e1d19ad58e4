using System.Globalization;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// A cure on the heated plate: how long this run lasted, from its start to its end. The least time is the route's
/// <c>minimumOpenMinutes</c>, the rest after it a <c>wait</c>; a repeatable cure may be run again, and the last run is the one that the
/// rest counts from.
/// </summary>
/// <remarks>A clock; no source needed. Checks: <c>BondAndCureTests</c>.</remarks>
public sealed class TimeOnPlate : StageMethod
{
    private const string Minutes = "plateMinutes";

    /// <inheritdoc/>
    public override string Name => "cure";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "A cure on the heated plate: how long this run lasted. The least time is the stage's own (takes at least); the rest"
                + " after it is a"
                + " wait of the next stage. Where it may be run again, the last run counts.",
            [],
            0,
            [new(Minutes, "min") { Required = true }],
            [],
            ["A clock; the workshop's own rule."]
        );

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) => [.. NeedsComputed(stage, Minutes), .. ComputesNoOther(stage)];

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        characteristic == Minutes ? "end less start of this run on the plate, in whole minutes. A clock; the workshop's own rule." : null;

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        var minutes = Math.Floor((decimal)(input.ClosedAt - input.OpenedAt).TotalMinutes);
        return new(
            [new(Minutes, minutes, minutes.ToString(CultureInfo.InvariantCulture), null)],
            input.AttemptNumber > 1 ? [new(TensionTexts.RunOnThePlate(input.AttemptNumber), false)] : []
        );
    }
}
