using MathNet.Numerics;

namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// How many of k failures fall on one group of m parts when n parts are elsewhere and the odds of failing here are omega times those
/// elsewhere: the (Fisher) noncentral hypergeometric distribution, P(x) proportional to C(m, x) C(n, k - x) omega^x.
/// </summary>
/// <remarks>
/// Sums run outwards from the mode by the ratio of neighbours and stop when nothing more can be added, so that a table of a million
/// parts costs no more than a few thousand steps. Valid for counts of 0 or more with k at most m + n, and omega above 0.
/// Source: Fisher, Statistical Methods for Research Workers; the odds-ratio family as in R's fisher.test. Checked by F8 and
/// <c>IntervalAndTestProperties</c>.
/// </remarks>
/// <param name="here">m, the parts of the group.</param>
/// <param name="elsewhere">n, the parts outside it.</param>
/// <param name="failed">k, the failures of both together.</param>
internal readonly struct FailureCountDistribution(long here, long elsewhere, long failed)
{
    private const double Negligible = 1e-20;

    public long Lowest { get; } = Math.Max(0, failed - elsewhere);

    public long Highest { get; } = Math.Min(failed, here);

    /// <summary>ln of C(m, x) C(n, k - x), the weight at omega = 1.</summary>
    public double LogWeight(long x) => LogChoose(here, x) + LogChoose(elsewhere, failed - x);

    /// <summary>The most probable count.</summary>
    public long Mode(double logOmega)
    {
        long low = Lowest,
            high = Highest;
        double omega = Math.Exp(logOmega);
        while (low < high)
        {
            long middle = low + (high - low + 1) / 2;
            if (Ratio(middle - 1) * omega >= 1)
            {
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }

        return low;
    }

    /// <summary>The mean count.</summary>
    public double Mean(double logOmega)
    {
        long mode = Mode(logOmega);
        double omega = Math.Exp(logOmega),
            total = 1,
            offset = 0,
            weight = 1;
        for (long x = mode; x < Highest && weight > Negligible; x++)
        {
            weight *= Ratio(x) * omega;
            total += weight;
            offset += weight * (x + 1 - mode);
        }

        weight = 1;
        for (long x = mode; x > Lowest && weight > Negligible; x--)
        {
            weight /= Ratio(x - 1) * omega;
            total += weight;
            offset += weight * (x - 1 - mode);
        }

        return mode + offset / total;
    }

    /// <summary>P(X >= x).</summary>
    public double AtLeast(long x, double logOmega) =>
        x <= Lowest ? 1
        : x > Mode(logOmega) ? Outwards(x, logOmega, +1)
        : 1 - Outwards(x - 1, logOmega, -1);

    /// <summary>P(X &lt;= x).</summary>
    public double AtMost(long x, double logOmega) =>
        x >= Highest ? 1
        : x < Mode(logOmega) ? Outwards(x, logOmega, -1)
        : 1 - Outwards(x + 1, logOmega, +1);

    /// <summary>
    /// The probability of x and of everything beyond it, seen from the mode; x must not lie on the other side of the mode.
    /// </summary>
    private double Outwards(long x, double logOmega, int direction)
    {
        if (x < Lowest || x > Highest)
        {
            return 0;
        }

        double omega = Math.Exp(logOmega),
            sum = 1,
            weight = 1;
        long end = direction > 0 ? Highest : Lowest;
        for (long i = x; i != end && weight > Negligible * sum; i += direction)
        {
            weight = direction > 0 ? weight * Ratio(i) * omega : weight / (Ratio(i - 1) * omega);
            sum += weight;
        }

        long mode = Mode(logOmega);
        double relative = LogWeight(x) - LogWeight(mode) + (x - mode) * logOmega;
        return Math.Min(1, sum * Math.Exp(relative) / Total(mode, omega));
    }

    private double Total(long mode, double omega)
    {
        double total = 1,
            weight = 1;
        for (long x = mode; x < Highest && weight > Negligible; x++)
        {
            total += weight *= Ratio(x) * omega;
        }

        weight = 1;
        for (long x = mode; x > Lowest && weight > Negligible; x--)
        {
            total += weight /= Ratio(x - 1) * omega;
        }

        return total;
    }

    /// <summary>P(x + 1) / P(x) at omega = 1.</summary>
    private double Ratio(long x) => (double)(here - x) * (failed - x) / ((x + 1.0) * (elsewhere - failed + x + 1.0));

    private static double LogChoose(long n, long k) => LogFactorial(n) - LogFactorial(k) - LogFactorial(n - k);

    private static double LogFactorial(long n) => SpecialFunctions.GammaLn(n + 1.0);
}
