namespace Traceability.Domain.Stages;

/// <summary>The plainest method: entered values against their limits, slots filled, clocks kept. Nothing is computed.</summary>
public sealed class EnteredLimits : StageMethod
{
    /// <inheritdoc/>
    public override string Name => "entered-limits";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override StageOutcome Judge(StageInput input) => StageOutcome.Nothing;
}
