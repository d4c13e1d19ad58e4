using MathNet.Numerics.Integration;

namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// The range W of n standard normal values: P(W &lt;= w) = n Integral phi(x) [Phi(x + w) - Phi(x)]^(n-1) dx.
/// </summary>
/// <remarks>
/// Mean d2 = Integral [1 - (1 - Phi)^n - Phi^n] dx; E(W^2) = 2 Integral w (1 - P(W &lt;= w)) dw. The trapezoidal rule is used where the
/// integrand and all its derivatives vanish at both ends, where it is exact to rounding. Source: E. S. Pearson, Biometrika 24 (1932);
/// D. C. Montgomery, Introduction to Statistical Quality Control. Checked by F1.
/// </remarks>
internal static class RangeDistribution
{
    private const double Reach = 9;
    private const int Steps = 360;
    private const double Step = 2 * Reach / Steps;
    private const double WidestRange = 14;

    public static double Mean(int n)
    {
        double sum = 0;
        for (int i = 0; i <= Steps; i++)
        {
            double below = NormalDistribution.Below(-Reach + i * Step);
            sum += 1 - Math.Pow(1 - below, n) - Math.Pow(below, n);
        }

        return sum * Step;
    }

    public static double StandardDeviation(int n)
    {
        double square = 2 * GaussLegendreRule.Integrate(w => w * (1 - Below(w, n)), 0, WidestRange, 96),
            mean = Mean(n);
        return Math.Sqrt(square - mean * mean);
    }

    public static double Below(double w, int n)
    {
        double sum = 0;
        for (int i = 0; i <= Steps; i++)
        {
            double x = -Reach + i * Step;
            sum += NormalDistribution.Density(x) * Math.Pow(NormalDistribution.Below(x + w) - NormalDistribution.Below(x), n - 1);
        }

        return Math.Min(1, n * sum * Step);
    }
}
