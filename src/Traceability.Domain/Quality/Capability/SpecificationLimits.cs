namespace Traceability.Domain.Quality.Capability;

/// <summary>What a characteristic may be. One side may be open, not both.</summary>
/// <param name="Lower">The lower limit (LSL), or null.</param>
/// <param name="Upper">The upper limit (USL), or null; above the lower one.</param>
public sealed record SpecificationLimits(double? Lower, double? Upper)
{
    /// <summary>Throws when both sides are open, a limit is not finite, or the limits are in the wrong order.</summary>
    public void Require()
    {
        bool finite = double.IsFinite(Lower ?? 0) && double.IsFinite(Upper ?? 0);
        if ((Lower is null && Upper is null) || !finite || Lower >= Upper)
        {
            throw new InvalidOperationException("Limits need at least one finite side, and the lower one below the upper one.");
        }
    }
}
