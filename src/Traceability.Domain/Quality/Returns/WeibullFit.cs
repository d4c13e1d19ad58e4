using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Returns;

/// <summary>
/// Field life as a Weibull distribution, R(t) = exp(-(t/eta)^beta): beta below 1 early failures, about 1 chance, above 1 wear.
/// </summary>
/// <remarks>
/// Maximum likelihood with units still good (right-censored): beta solves Sum t^b ln t / Sum t^b - 1/b = mean of ln t over the failures,
/// eta = (Sum t^b / r)^(1/b), sums over all units, r failures. Intervals from the observed information of ln beta and ln eta.
/// Needs 2 failures, and one unit that outlived the first of them; otherwise "not enough data". Times must be finite and above 0.
/// Source: NIST e-Handbook 8.4.1; as R's survreg with beta = 1/scale, eta = exp(intercept). Checked by F15.
/// </remarks>
/// <param name="Shape">beta.</param>
/// <param name="Scale">eta, in the unit of the times: 63.2 % have failed by then.</param>
/// <param name="ShapeInterval">The interval of beta.</param>
/// <param name="ScaleInterval">The interval of eta.</param>
/// <param name="LogLikelihood">Sum of log densities of failures and log survival of the others.</param>
/// <param name="Failures">r.</param>
/// <param name="Units">All units.</param>
public sealed record WeibullFit(
    double Shape,
    double Scale,
    Interval ShapeInterval,
    Interval ScaleInterval,
    double LogLikelihood,
    int Failures,
    int Units
)
{
    /// <summary>R(t), the share still good at a time.</summary>
    /// <param name="time">t, 0 or more.</param>
    public double Reliability(double time) => ReliabilityOf(Shape, Scale, time);

    /// <summary>The time by which a share has failed: B10 at 0.10.</summary>
    /// <param name="failed">The share, from 0 to below 1.</param>
    public double TimeUntilFailed(double failed) => TimeUntilFailedOf(Shape, Scale, failed);

    /// <summary>R(t) = exp(-(t/eta)^beta) for given parameters.</summary>
    /// <param name="shape">beta, above 0.</param>
    /// <param name="scale">eta, above 0.</param>
    /// <param name="time">t, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="time"/> is negative.</exception>
    public static double ReliabilityOf(double shape, double scale, double time)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(time);
        return Math.Exp(-Math.Pow(time / scale, shape));
    }

    /// <summary>t = eta (-ln(1 - share))^(1/beta) for given parameters.</summary>
    /// <param name="shape">beta, above 0.</param>
    /// <param name="scale">eta, above 0.</param>
    /// <param name="failed">The share, from 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is below 0, or 1 or more.</exception>
    public static double TimeUntilFailedOf(double shape, double scale, double failed)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(failed);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(failed, 1);
        return scale * Math.Pow(-Math.Log(1 - failed), 1 / shape);
    }

    /// <summary>Fits the distribution.</summary>
    /// <param name="lifetimes">One per unit, in any order.</param>
    /// <param name="confidence">The confidence level of the intervals, between 0 and 1.</param>
    /// <exception cref="ArgumentException">A lifetime is not above 0.</exception>
    public static Computed<WeibullFit> Of(IReadOnlyList<Lifetime> lifetimes, double confidence = Interval.UsualConfidence)
    {
        Interval.RequireConfidence(confidence);
        double[] times = [.. lifetimes.Select(l => l.Time)],
            failed = [.. lifetimes.Where(l => l.Failed).Select(l => l.Time)];
        Sample.RequireFinite(times);
        if (times.Any(t => t <= 0))
        {
            throw new ArgumentException("A Weibull life is longer than 0.", nameof(lifetimes));
        }

        if (failed.Length < 2)
        {
            return new NotEnoughData("failures", 2, failed.Length);
        }

        // Times are taken relative to the longest, so that no power of them overflows.
        double longest = times.Max(),
            first = failed.Min();
        if (longest == first)
        {
            return new NotEnoughData("different times", 2, 1);
        }

        double[] logs = [.. times.Select(t => Math.Log(t / longest))];
        double meanLogFailed = failed.Average(t => Math.Log(t / longest));
        double shape = MonotoneRoot.FindAbove(ShapeEquation, 1e-9, 1);
        double scale = longest * Math.Pow(logs.Sum(l => Math.Exp(shape * l)) / failed.Length, 1 / shape);
        return Result(times, failed, shape, scale, confidence);

        double ShapeEquation(double b)
        {
            double powers = 0,
                weighted = 0;
            foreach (double l in logs)
            {
                double power = Math.Exp(b * l);
                powers += power;
                weighted += power * l;
            }

            return weighted / powers - 1 / b - meanLogFailed;
        }
    }

    private static WeibullFit Result(double[] times, double[] failed, double shape, double scale, double confidence)
    {
        // w = beta ln(t/eta); second derivatives of the log-likelihood in u = ln eta and v = ln beta, at the maximum where Sum e^w = r.
        double r = failed.Length,
            uu = 0,
            uv = 0,
            vv = 0,
            logLikelihood = 0;
        foreach (double t in times)
        {
            double w = shape * Math.Log(t / scale),
                e = Math.Exp(w);
            (uu, uv, vv, logLikelihood) = (uu + shape * shape * e, uv - shape * w * e, vv + (w + w * w) * e, logLikelihood - e);
        }

        foreach (double t in failed)
        {
            double w = shape * Math.Log(t / scale);
            (vv, logLikelihood) = (vv - w, logLikelihood + Math.Log(shape) + w - Math.Log(t));
        }

        double determinant = uu * vv - uv * uv,
            z = NormalDistribution.TwoSidedQuantile(confidence);
        return new WeibullFit(
            shape,
            scale,
            Around(shape, uu / determinant),
            Around(scale, vv / determinant),
            logLikelihood,
            (int)r,
            times.Length
        );

        Interval Around(double estimate, double logVariance)
        {
            double factor = Math.Exp(z * Math.Sqrt(logVariance));
            return new Interval(estimate / factor, estimate * factor, confidence);
        }
    }
}
