using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Trends;

/// <summary>The answer of <see cref="SpearmanCorrelation"/>.</summary>
/// <param name="Rho">The rank correlation, -1 to 1.</param>
/// <param name="P">Two-sided p by Student's t with n - 2, an approximation that is fair from about 10 pairs.</param>
/// <param name="Pairs">n.</param>
public sealed record SpearmanResult(double Rho, double P, int Pairs);

/// <summary>
/// Spearman's rank correlation: Pearson's correlation of the midranks; t = rho sqrt((n - 2)/(1 - rho^2)).
/// </summary>
/// <remarks>
/// Catches any steady rise or fall, straight or not. Needs 3 pairs and values that differ on both sides; otherwise "not enough data".
/// Source: C. Spearman (1904); as R's cor(method = "spearman"). Checked by F17-013.
/// </remarks>
public static class SpearmanCorrelation
{
    /// <summary>The correlation of paired values.</summary>
    /// <param name="first">One value per pair.</param>
    /// <param name="second">The other value per pair, in the same order.</param>
    /// <exception cref="ArgumentOutOfRangeException">The two lists are not of the same length.</exception>
    public static Computed<SpearmanResult> Of(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(second.Count, first.Count, nameof(second));
        int n = first.Count;
        if (n < 3)
        {
            return new NotEnoughData("pairs of values", 3, n);
        }

        IReadOnlyList<double> x = Midranks.Of(first).Ranks,
            y = Midranks.Of(second).Ranks;
        double middle = (n + 1) / 2.0,
            xx = 0,
            yy = 0,
            xy = 0;
        for (int i = 0; i < n; i++)
        {
            double dx = x[i] - middle,
                dy = y[i] - middle;
            (xx, yy, xy) = (xx + dx * dx, yy + dy * dy, xy + dx * dy);
        }

        if (xx == 0 || yy == 0)
        {
            return new NotEnoughData("different values on both sides", 2, 1);
        }

        double rho = Math.Clamp(xy / Math.Sqrt(xx * yy), -1, 1);
        double t = rho * Math.Sqrt((n - 2) / (1 - rho * rho));
        return new SpearmanResult(rho, double.IsInfinity(t) ? 0 : StudentDistribution.OutsideBothSides(t, n - 2), n);
    }
}
