using MathNet.Numerics;

namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// The beta distribution: P(X &lt;= x) = I_x(a, b), the regularised incomplete beta function, with shapes a and b above 0.
/// </summary>
/// <remarks>
/// Valid for x from 0 to 1, clamped outside. Source: Abramowitz and Stegun 26.5. Checked by <c>DistributionsAgainstTables</c> and,
/// through Clopper-Pearson and Student's t, by the vendored values of F7 and F17.
/// </remarks>
public static class BetaDistribution
{
    /// <summary>P(X &lt;= x).</summary>
    /// <param name="a">First shape, above 0.</param>
    /// <param name="b">Second shape, above 0.</param>
    /// <param name="x">Where to cut; below 0 the answer is 0, above 1 it is 1.</param>
    public static double Below(double a, double b, double x) =>
        x switch
        {
            <= 0 => 0,
            >= 1 => 1,
            _ => SpecialFunctions.BetaRegularized(a, b, x),
        };

    /// <summary>The x below which the share <paramref name="p"/> lies.</summary>
    /// <param name="a">First shape, above 0.</param>
    /// <param name="b">Second shape, above 0.</param>
    /// <param name="p">A probability from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> does not lie from 0 to 1.</exception>
    public static double Quantile(double a, double b, double p)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(p);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(p, 1);
        return p switch
        {
            0 => 0,
            1 => 1,
            _ => MonotoneRoot.Find(x => Below(a, b, x) - p, 0, 1),
        };
    }
}
