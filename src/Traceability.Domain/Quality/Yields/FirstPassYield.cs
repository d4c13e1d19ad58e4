using Traceability.Domain.Quality.Intervals;

namespace Traceability.Domain.Quality.Yields;

/// <summary>
/// The share of parts good at their first attempt: rework does not heal it.
/// </summary>
/// <remarks>
/// Estimate k/n with Wilson's interval. Nothing judged: "not enough data". Source: common definition of first-pass yield. Checked by
/// F12-004.
/// </remarks>
/// <param name="PassedFirst">k, passed at the first attempt.</param>
/// <param name="Judged">n, parts with a first verdict.</param>
/// <param name="Value">k/n, 0 to 1.</param>
/// <param name="Interval">Wilson's interval.</param>
public sealed record FirstPassYield(int PassedFirst, int Judged, double Value, Interval Interval)
{
    /// <summary>The yield of one step.</summary>
    /// <param name="passedFirst">k, from 0 to n.</param>
    /// <param name="judged">n, 0 or more.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    public static Computed<FirstPassYield> Of(int passedFirst, int judged, double confidence = Quality.Interval.UsualConfidence) =>
        WilsonInterval
            .Of(passedFirst, judged, confidence)
            .Select(interval => new FirstPassYield(passedFirst, judged, (double)passedFirst / judged, interval));

    /// <summary>The exact (Clopper-Pearson) interval of the same counts, for a reader who asks for it.</summary>
    public Interval ExactInterval => ClopperPearsonInterval.Of(PassedFirst, Judged, Interval.Confidence).Value;
}
