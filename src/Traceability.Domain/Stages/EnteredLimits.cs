using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages;

/// <summary>The plainest method: entered values against their limits, slots filled, clocks kept. Nothing is computed.</summary>
public sealed class EnteredLimits : StageMethod
{
    /// <inheritdoc/>
    public override string Name => "entered-limits";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "Values that a person or an instrument enters are held against the limits of the route; slots are filled and clocks"
                + " are kept. Nothing"
                + " is computed. For every stage that needs no physics, one of the workshop's own included.",
            [],
            0,
            [],
            [],
            ["No formula: limits of the route, both included."]
        );

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
        stage.Characteristics.Where(c => !c.Entered).Select(c => StageTexts.MethodComputesNothing(c.Name));

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input) => StageOutcome.Nothing;
}
