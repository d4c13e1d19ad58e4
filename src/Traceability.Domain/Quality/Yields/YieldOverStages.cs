using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Intervals;

namespace Traceability.Domain.Quality.Yields;

/// <summary>
/// The chance to pass every stage at the first attempt, from parts of which some have not reached every stage yet: S = product over the
/// stages of (reached - failed)/reached. A part counts at the stages that it reached, so a young lot is neither better nor worse for being
/// young.
/// </summary>
/// <remarks>
/// Greenwood: v = Sum d/(n (n - d)) with n reached and d failed; interval S^exp(-+ z sqrt(v)/ln S), the complementary log-log transform,
/// which stays between 0 and 1. Where it says nothing: without any failure the lower end is Wilson's for the fewest that reached a stage,
/// all of them passed (they are those known to have passed everything); when all failed at a stage the upper end is the least of Wilson's
/// for such stages. Nobody anywhere: "not enough data". Sources: M. Greenwood, Reports on Public Health and Medical Subjects 33 (1926); J.
/// D. Kalbfleisch and R. L. Prentice, The Statistical Analysis of Failure Time Data, section 1.4 (from memory); as R's survfit with
/// conf.type "log-log". Checked by <c>YieldOverStagesAgainstPublishedExamples</c>.
/// </remarks>
/// <param name="Value">S, 0 to 1.</param>
/// <param name="Interval">Its interval.</param>
/// <param name="Stages">How many stages it is the product of.</param>
public sealed record YieldOverStages(double Value, Interval Interval, int Stages)
{
    /// <summary>The yield over stages.</summary>
    /// <param name="stages">Of every stage how many reached it, and how many of them failed there; stages that nobody reached say
    /// nothing.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A number of failures is negative or greater than that of the parts which reached the stage.
    /// </exception>
    public static Computed<YieldOverStages> Of(IEnumerable<(int Reached, int Failed)> stages, double confidence = Interval.UsualConfidence)
    {
        double z = NormalDistribution.TwoSidedQuantile(confidence);
        (int Reached, int Failed)[] known = [.. stages.Where(s => s.Reached > 0)];
        if (known.Length == 0)
        {
            return new NotEnoughData("parts that reached a stage", 1, 0);
        }

        double value = 1,
            greenwood = 0;
        foreach ((int reached, int failed) in known)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(failed);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(failed, reached);
            value *= (double)(reached - failed) / reached;
            greenwood += failed / ((double)reached * (reached - failed));
        }

        return new YieldOverStages(value, IntervalOf(value, greenwood), known.Length);

        Interval IntervalOf(double s, double v)
        {
            if (known.All(k => k.Failed == 0))
            {
                int fewest = known.Min(k => k.Reached);
                return new(WilsonInterval.Of(fewest, fewest, confidence).Value.Lower, 1, confidence);
            }

            if (known.Any(k => k.Failed == k.Reached))
            {
                return new(
                    0,
                    known.Where(k => k.Failed == k.Reached).Min(k => WilsonInterval.Of(0, k.Reached, confidence).Value.Upper),
                    confidence
                );
            }

            double reach = z * Math.Sqrt(v) / Math.Abs(Math.Log(s));
            return new(Math.Pow(s, Math.Exp(reach)), Math.Pow(s, Math.Exp(-reach)), confidence);
        }
    }
}
