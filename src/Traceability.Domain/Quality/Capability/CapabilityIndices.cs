using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Capability;

/// <summary>
/// How well a process fits its limits: Cp = (USL - LSL)/(6 s), Cpk = min(USL - mean, mean - LSL)/(3 s). With the short-term s they are
/// called Cp and Cpk, with the overall s Pp and Ppk.
/// </summary>
/// <remarks>
/// Valid for s above 0. Cp needs both limits and is null with one. Meaningful for a steady, normal process only: see
/// <see cref="CapabilityStudy"/>. Source: NIST e-Handbook 6.1.6. Checked by F6.
/// </remarks>
/// <param name="Potential">Cp or Pp: as if the mean sat in the middle; null with one limit.</param>
/// <param name="Actual">Cpk or Ppk: to the nearer limit; negative when the mean lies outside.</param>
public sealed record CapabilityIndices(double? Potential, double Actual)
{
    /// <summary>The indices of a process.</summary>
    /// <param name="mean">The process mean.</param>
    /// <param name="sigma">The standard deviation, short-term or overall, above 0.</param>
    /// <param name="limits">The limits, in the same unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A standard deviation of 0 or less, or limits that <see cref="SpecificationLimits.Require"/> refuses.
    /// </exception>
    public static CapabilityIndices Of(double mean, double sigma, SpecificationLimits limits)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sigma);
        limits.Require();
        double above = limits.Upper - mean ?? double.PositiveInfinity,
            below = mean - limits.Lower ?? double.PositiveInfinity;
        return new CapabilityIndices((limits.Upper - limits.Lower) / (6 * sigma), Math.Min(above, below) / (3 * sigma));
    }

    /// <summary>The share (0 to 1) of a normal process that lies outside the limits; times a million it is parts per million.</summary>
    /// <param name="mean">The process mean.</param>
    /// <param name="sigma">The standard deviation, above 0.</param>
    /// <param name="limits">The limits, in the same unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A standard deviation of 0 or less, or limits that <see cref="SpecificationLimits.Require"/> refuses.
    /// </exception>
    public static double ShareOutside(double mean, double sigma, SpecificationLimits limits)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sigma);
        limits.Require();
        double above = limits.Upper is { } upper ? NormalDistribution.Above((upper - mean) / sigma) : 0;
        double below = limits.Lower is { } lower ? NormalDistribution.Below((lower - mean) / sigma) : 0;
        return above + below;
    }
}
