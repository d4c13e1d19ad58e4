using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Returns;

/// <summary>When the observation of a constant failure rate ended.</summary>
public enum ObservationEnd
{
    /// <summary>At a time set beforehand, as in the field.</summary>
    AtATime,

    /// <summary>With the last failure counted.</summary>
    AtAFailure,
}

/// <summary>
/// Mean time between failures at a constant rate: T/r for r failures in a total time T of all units.
/// </summary>
/// <remarks>
/// Two-sided interval: 2 T/chi2_{1-a/2, 2r+2} .. 2 T/chi2_{a/2, 2r}; 2r instead of 2r+2 when observation ended at a failure. Without a
/// failure there is no estimate but a one-sided lower bound, 2 T/chi2_{1-a, 2} (infinite estimate and upper end). T must be above 0.
/// Source: NIST e-Handbook 8.4.5.1. Checked by F15-011.
/// </remarks>
/// <param name="MeanTime">T/r in the unit of T; infinite without failures.</param>
/// <param name="Interval">Its interval.</param>
/// <param name="Failures">r.</param>
public sealed record ExponentialLife(double MeanTime, Interval Interval, int Failures)
{
    /// <summary>The mean time between failures.</summary>
    /// <param name="failures">r, 0 or more (1 or more when observation ended at a failure).</param>
    /// <param name="totalTime">T, the time of all units together, above 0.</param>
    /// <param name="end">How observation ended.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="failures"/> is negative, <paramref name="totalTime"/> is not above 0, or the confidence level does not lie
    /// between 0 and 1.
    /// </exception>
    public static Computed<ExponentialLife> Of(
        int failures,
        double totalTime,
        ObservationEnd end = ObservationEnd.AtATime,
        double confidence = Quality.Interval.UsualConfidence
    )
    {
        Quality.Interval.RequireConfidence(confidence);
        ArgumentOutOfRangeException.ThrowIfNegative(failures);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(totalTime);
        if (failures == 0)
        {
            return end == ObservationEnd.AtAFailure
                ? new NotEnoughData("failures", 1, 0)
                : new ExponentialLife(
                    double.PositiveInfinity,
                    new Interval(2 * totalTime / ChiSquareDistribution.Quantile(confidence, 2), double.PositiveInfinity, confidence),
                    0
                );
        }

        double tail = (1 - confidence) / 2;
        int lowerDf = 2 * failures + (end == ObservationEnd.AtATime ? 2 : 0);
        return new ExponentialLife(
            totalTime / failures,
            new Interval(
                2 * totalTime / ChiSquareDistribution.Quantile(1 - tail, lowerDf),
                2 * totalTime / ChiSquareDistribution.Quantile(tail, 2 * failures),
                confidence
            ),
            failures
        );
    }
}
