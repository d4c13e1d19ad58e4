using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Quality.Capability;

/// <summary>What a characteristic may be. One side may be open, not both.</summary>
/// <param name="Lower">The lower limit (LSL), or null.</param>
/// <param name="Upper">The upper limit (USL), or null; above the lower one.</param>
public sealed record SpecificationLimits(double? Lower, double? Upper)
{
    /// <summary>Guards what is computed from them.</summary>
    /// <exception cref="ArgumentOutOfRangeException">
    /// No limit, a limit that is not finite, limits in the wrong order, or no room between them.
    /// </exception>
    public void Require()
    {
        new ToleranceInterval(Lower, Upper).Check();
        if (Lower == Upper)
            throw new ArgumentOutOfRangeException(nameof(Upper), Upper, "must lie above the lower limit");
    }
}
