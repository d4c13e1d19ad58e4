using MathNet.Numerics.Distributions;

namespace Traceability.Domain.Values.Limits;

/// <summary>
/// How probable it is that the true value conforms: Phi((U - y)/u) - Phi((L - y)/u).
/// </summary>
/// <remarks>
/// y measured value, u its standard uncertainty (expanded uncertainty over its coverage factor), L and U the limits, Phi the normal
/// distribution. Nothing known about the value beforehand. Source: JCGM 106:2012, 7.2 to 7.4, from memory. Checks: published values
/// F18, <c>DecisionTests</c>.
/// </remarks>
public static class ConformanceProbability
{
    /// <summary>Probability of conformance, 0 to 1.</summary>
    /// <param name="value">y.</param>
    /// <param name="standardUncertainty">u, in the unit of y; not negative. Zero gives 0 or 1.</param>
    /// <param name="tolerance">The limits.</param>
    /// <exception cref="ArgumentOutOfRangeException">No limit, limits in the wrong order, a negative uncertainty, or NaN.</exception>
    public static double Of(double value, double standardUncertainty, ToleranceInterval tolerance)
    {
        tolerance.Check();
        Require.Finite(value);
        Require.NotNegative(standardUncertainty);
        if (standardUncertainty == 0)
            return value >= tolerance.LowerOrNone && value <= tolerance.UpperOrNone ? 1 : 0;

        // The two tails outside are summed: far inside the limits that keeps digits which a difference of two ones would lose.
        var below = tolerance.Lower is { } lower ? Normal.CDF(0, 1, (lower - value) / standardUncertainty) : 0;
        var above = tolerance.Upper is { } upper ? Normal.CDF(0, 1, (value - upper) / standardUncertainty) : 0;
        return Math.Clamp(1 - below - above, 0, 1);
    }
}
