using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Charts;

/// <summary>
/// Finds Nelson's eight patterns in a series of standardised points.
/// </summary>
/// <remarks>
/// All inequalities are strict: a point on a limit gives no sign, a point on the centre line ends a run of rule 2, equal neighbours end
/// runs of rules 3 and 4. A break is reported at every point that completes the pattern; for "two of three" and "four of five" that point
/// itself lies out. Valid for finite values; a short series simply cannot break the long rules. Source: L. S. Nelson, J. Quality Technology
/// 16 (1984). Checked by F5 and <c>NelsonRulesExamples</c>.
/// </remarks>
public static class NelsonRules
{
    /// <summary>All breaks, by point and then by rule.</summary>
    /// <param name="standardised">Distances from the centre line in sigmas, in the order made.</param>
    public static IReadOnlyList<RuleBreak> Check(IReadOnlyList<double> standardised)
    {
        Sample.RequireFinite(standardised);
        var breaks = new List<RuleBreak>();
        int sameSide = 0,
            steps = 0,
            turns = 0,
            inside = 0,
            outside = 0;
        for (int i = 0; i < standardised.Count; i++)
        {
            double z = standardised[i],
                before = i > 0 ? standardised[i - 1] : z;
            int side = Math.Sign(z),
                step = Math.Sign(z - before),
                stepBefore = i > 1 ? Math.Sign(before - standardised[i - 2]) : 0;
            sameSide =
                side == 0 ? 0
                : i > 0 && side == Math.Sign(before) ? sameSide + 1
                : 1;
            steps =
                step == 0 ? 0
                : step == stepBefore ? steps + 1
                : 1;
            turns =
                step == 0 ? 0
                : step == -stepBefore ? turns + 1
                : 1;
            inside = Math.Abs(z) < 1 ? inside + 1 : 0;
            outside = Math.Abs(z) > 1 ? outside + 1 : 0;

            Note(Math.Abs(z) > 3, NelsonRule.OneBeyondThreeSigma);
            Note(sameSide >= 9, NelsonRule.NineOnOneSide);
            Note(steps >= 5, NelsonRule.SixRisingOrFalling);
            Note(turns >= 13, NelsonRule.FourteenAlternating);
            Note(BeyondOnOneSide(2, 3, 2), NelsonRule.TwoOfThreeBeyondTwoSigma);
            Note(BeyondOnOneSide(4, 5, 1), NelsonRule.FourOfFiveBeyondOneSigma);
            Note(inside >= 15, NelsonRule.FifteenWithinOneSigma);
            Note(outside >= 8, NelsonRule.EightBeyondOneSigma);

            void Note(bool broken, NelsonRule rule)
            {
                if (broken)
                {
                    breaks.Add(new RuleBreak(rule, i));
                }
            }

            bool BeyondOnOneSide(int needed, int of, double sigmas)
            {
                if (side * z <= sigmas)
                {
                    return false;
                }

                int count = 0;
                for (int j = Math.Max(0, i - of + 1); j <= i; j++)
                {
                    count += side * standardised[j] > sigmas ? 1 : 0;
                }

                return count >= needed;
            }
        }

        return breaks;
    }
}
