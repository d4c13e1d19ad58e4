using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Returns;

/// <summary>One step of a survival curve.</summary>
/// <param name="Time">When units failed.</param>
/// <param name="AtRisk">n_i, units still under observation just before.</param>
/// <param name="Failures">d_i, units that failed then.</param>
/// <param name="Survival">S(t) from here on.</param>
/// <param name="StandardError">Greenwood's standard error; null where no unit is left and none can be given.</param>
/// <param name="Interval">The interval of S(t); 0 to 1 where no standard error can be given.</param>
public sealed record SurvivalStep(double Time, int AtRisk, int Failures, double Survival, double? StandardError, Interval Interval);

/// <summary>
/// The Kaplan-Meier curve of units still good after a time in the field, honest about those not long out yet.
/// </summary>
/// <remarks>
/// S(t) = product over t_i &lt;= t of (1 - d_i/n_i); Greenwood: se = S sqrt(Sum d_i/(n_i (n_i - d_i))); interval exp(ln S -+ z se/S), cut
/// at 1 (the "log" kind). A unit that leaves observation at a time of failure is still at risk then. Needs 1 unit, otherwise "not enough
/// data"; times must be finite and not negative. Source: Kaplan and Meier, JASA 53 (1958); as R's survfit. Checked by F15.
/// </remarks>
/// <param name="Units">How many units there are.</param>
/// <param name="Steps">The steps, in order of time; empty when nothing failed.</param>
public sealed record KaplanMeier(int Units, IReadOnlyList<SurvivalStep> Steps)
{
    /// <summary>The time by which half have failed, or null when the curve has not come down to one half.</summary>
    public double? MedianTime
    {
        get
        {
            const double half = 0.5,
                rounding = 1e-12;
            for (int i = 0; i < Steps.Count; i++)
            {
                if (Steps[i].Survival <= half + rounding)
                {
                    // A curve that rests exactly on one half is read in the middle of that stretch, as R does.
                    bool rests = Steps[i].Survival >= half - rounding && i + 1 < Steps.Count;
                    return rests ? (Steps[i].Time + Steps[i + 1].Time) / 2 : Steps[i].Time;
                }
            }

            return null;
        }
    }

    /// <summary>S(t).</summary>
    /// <param name="time">t, 0 or more.</param>
    public double SurvivalAt(double time) => Steps.LastOrDefault(step => step.Time <= time)?.Survival ?? 1;

    /// <summary>Draws the curve.</summary>
    /// <param name="lifetimes">One per unit, in any order.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A lifetime is negative, or the confidence level does not lie between 0 and 1.
    /// </exception>
    public static Computed<KaplanMeier> Of(IReadOnlyList<Lifetime> lifetimes, double confidence = Interval.UsualConfidence)
    {
        double z = NormalDistribution.TwoSidedQuantile(confidence);
        Sample.RequireFinite([.. lifetimes.Select(l => l.Time)]);
        if (lifetimes.Count == 0)
        {
            return new NotEnoughData("units", 1, 0);
        }

        int atRisk = lifetimes.Count;
        double survival = 1,
            greenwood = 0;
        var steps = new List<SurvivalStep>();
        foreach (var moment in lifetimes.GroupBy(l => l.Time).OrderBy(g => g.Key))
        {
            ArgumentOutOfRangeException.ThrowIfNegative(moment.Key, nameof(lifetimes));
            int failures = moment.Count(l => l.Failed);
            if (failures > 0)
            {
                survival *= 1 - (double)failures / atRisk;
                greenwood += failures / ((double)atRisk * (atRisk - failures));
                steps.Add(Step(moment.Key, failures));
            }

            atRisk -= moment.Count();
        }

        return new KaplanMeier(lifetimes.Count, steps);

        SurvivalStep Step(double time, int failures)
        {
            // When the last units fail together Greenwood's sum is infinite and the curve is 0: no standard error, and no step after this
            // one.
            if (failures == atRisk)
            {
                return new SurvivalStep(time, atRisk, failures, 0, null, new Interval(0, 1, confidence));
            }

            double relative = Math.Sqrt(greenwood);
            var interval = new Interval(survival * Math.Exp(-z * relative), Math.Min(1, survival * Math.Exp(z * relative)), confidence);
            return new SurvivalStep(time, atRisk, failures, survival, survival * relative, interval);
        }
    }
}
