using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Comparisons;

/// <summary>
/// Compares a group with the rest inside each stratum (builder, week, bench) and pools the strata, so that a busy builder does not look
/// like a bad lot.
/// </summary>
/// <remarks>
/// Per stratum of N parts: E = (a+b)(a+c)/N, V = (a+b)(c+d)(a+c)(b+d)/(N^2 (N-1)). D = |Sum (a - E)|.
/// chi^2 = D^2 / Sum V, corrected chi^2 = (D - 1/2)^2 / Sum V (no correction when D is below 1/2, as in R), one degree of freedom.
/// Common odds ratio = Sum(a d/N) / Sum(b c/N). Interval: exp(ln OR -+ z s) with the Robins-Breslow-Greenland variance
/// s^2 = Sum P R/(2 R+^2) + Sum (P S + Q R)/(2 R+ S+) + Sum Q S/(2 S+^2), P = (a+d)/N, Q = (b+c)/N, R = a d/N, S = b c/N.
/// Strata with one group or one result only carry no comparison; with none left: "not enough data".
/// Sources: Mantel and Haenszel, JNCI 22 (1959); Robins, Breslow and Greenland, Biometrics 42 (1986); R's mantelhaen.test.
/// Checked by F9 and <c>IntervalAndTestProperties</c>.
/// </remarks>
public static class CochranMantelHaenszel
{
    /// <summary>The test over all strata.</summary>
    /// <param name="strata">One table per stratum.</param>
    /// <param name="confidence">The confidence level of the interval, between 0 and 1.</param>
    public static Computed<CochranMantelHaenszelResult> Test(
        IReadOnlyCollection<FailureTable> strata,
        double confidence = Interval.UsualConfidence
    )
    {
        double z = NormalDistribution.TwoSidedQuantile(confidence);
        double deviation = 0,
            variance = 0,
            r = 0,
            s = 0,
            pr = 0,
            psqr = 0,
            qs = 0;
        int used = 0;
        foreach (FailureTable t in strata)
        {
            if (t.Missing() is not null)
            {
                continue;
            }

            used++;
            double n = t.Total;
            deviation += t.FailedHere - (double)t.Here * t.Failed / n;
            variance += (double)t.Here * t.Elsewhere / n * ((double)t.Failed * t.Passed / n) / (n - 1);
            double ri = t.FailedHere * (t.PassedElsewhere / n),
                si = t.PassedHere * (t.FailedElsewhere / n);
            double pi = (t.FailedHere + t.PassedElsewhere) / n,
                qi = (t.PassedHere + t.FailedElsewhere) / n;
            (r, s) = (r + ri, s + si);
            (pr, psqr, qs) = (pr + pi * ri, psqr + pi * si + qi * ri, qs + qi * si);
        }

        if (used == 0)
        {
            return new NotEnoughData("strata with both groups and both results", 1, 0);
        }

        double distance = Math.Abs(deviation);
        double corrected = distance >= 0.5 ? distance - 0.5 : distance;
        double chiSquare = distance * distance / variance,
            chiSquareCorrected = corrected * corrected / variance;
        return new CochranMantelHaenszelResult(
            chiSquareCorrected,
            ChiSquareDistribution.Above(chiSquareCorrected, 1),
            chiSquare,
            ChiSquareDistribution.Above(chiSquare, 1),
            s == 0 ? double.PositiveInfinity : r / s,
            OddsRatioInterval(),
            used,
            strata.Count - used
        );

        Interval OddsRatioInterval()
        {
            if (r == 0 || s == 0)
            {
                return new Interval(0, double.PositiveInfinity, confidence);
            }

            double half = z * Math.Sqrt(pr / (2 * r * r) + psqr / (2 * r * s) + qs / (2 * s * s));
            return new Interval(r / s * Math.Exp(-half), r / s * Math.Exp(half), confidence);
        }
    }
}
