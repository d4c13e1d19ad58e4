using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.ManyTests;

namespace Traceability.Domain.Quality.Causes;

/// <summary>
/// Ranks every level of every factor by its association with the failures: Fisher's exact test of the level against the other levels of its
/// factor, adjusted over all levels by Benjamini-Hochberg.
/// </summary>
/// <remarks>
/// Parts of unknown level are left out of that factor alone. A level with fewer than the least number of parts is not compared (nor
/// adjusted for). A factor of two levels is one comparison, shown by the worse level. Order: adjusted p, then raw p, then the larger odds
/// ratio, then the order of the factors. Association is not cause: levels that nearly the same parts have (phi of 0.9 or more) are named as
/// not to be told apart, and every upper line is compared again with the leading level allowed for (Cochran-Mantel-Haenszel).
/// Needs 1 failed and 1 passed part and 2 levels to compare; otherwise "not enough data".
/// Checked by <c>CauseRankingTests</c>; the statistics it uses have their own outside checks.
/// </remarks>
public static class CauseRanking
{
    /// <summary>Levels with fewer parts than this are not compared unless asked otherwise.</summary>
    public const int UsualLeastParts = 5;

    /// <summary>From this phi on two levels cannot be told apart.</summary>
    public const double LookAlikeOverlap = 0.9;

    /// <summary>How many lines from the top are looked at for look-alikes and for what remains beside the leader.</summary>
    private const int LinesExamined = 12;

    /// <summary>Ranks the factors of a table of parts.</summary>
    /// <param name="table">The parts.</param>
    /// <param name="leastParts">The least number of parts of a level to be compared, 1 or more.</param>
    /// <param name="most">The most associations to return, 1 or more.</param>
    /// <param name="confidence">The confidence level of the odds-ratio intervals, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="leastParts"/> or <paramref name="most"/> is below 1.</exception>
    public static Computed<CauseReport> Rank(
        FactorTable table,
        int leastParts = UsualLeastParts,
        int most = 50,
        double confidence = Interval.UsualConfidence
    )
    {
        Computed<CauseReport> ranked = Rank(table.Count(), leastParts, most, confidence);
        if (!ranked.IsKnown)
        {
            return ranked;
        }

        var overlaps = new FactorOverlaps(table);
        CauseAssociation[] lines = [.. ranked.Value.Associations];
        for (int i = 0; i < Math.Min(LinesExamined, lines.Length); i++)
        {
            lines[i] = lines[i] with
            {
                CannotBeToldFrom = overlaps.LookAlikes(lines[i].Factor, lines[i].Level, LookAlikeOverlap),
                GivenLeader =
                    i == 0
                        ? null
                        : CochranMantelHaenszel.Test(
                            overlaps.Beside(lines[i].Factor, lines[i].Level, lines[0].Factor, lines[0].Level),
                            confidence
                        ),
            };
        }

        return ranked.Value with
        {
            Associations = lines,
            Parts = table.Rows,
            Failed = table.Failed.Count(true),
        };
    }

    /// <summary>
    /// Ranks counts made elsewhere, by the database for example. Counts alone cannot show which levels look alike or what remains beside
    /// the leader.
    /// </summary>
    /// <param name="counts">Failed and total of every level of every factor.</param>
    /// <param name="leastParts">The least number of parts of a level to be compared, 1 or more.</param>
    /// <param name="most">The most associations to return, 1 or more.</param>
    /// <param name="confidence">The confidence level of the odds-ratio intervals, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="leastParts"/> or <paramref name="most"/> is below 1.</exception>
    public static Computed<CauseReport> Rank(
        IReadOnlyList<LevelCount> counts,
        int leastParts = UsualLeastParts,
        int most = 50,
        double confidence = Interval.UsualConfidence
    )
    {
        Interval.RequireConfidence(confidence);
        ArgumentOutOfRangeException.ThrowIfLessThan(leastParts, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        IGrouping<string, LevelCount>[] factors = [.. counts.Where(c => c.Total > 0).GroupBy(c => c.Factor)];
        int parts = factors.Length == 0 ? 0 : factors.Max(f => f.Sum(c => c.Total));
        int failed = factors.Length == 0 ? 0 : factors.Max(f => f.Sum(c => c.Failed));
        int passed = factors.Length == 0 ? 0 : factors.Max(f => f.Sum(c => c.Total - c.Failed));
        if (failed == 0 || passed == 0)
        {
            return new NotEnoughData(failed == 0 ? "failed parts" : "passed parts", 1, 0);
        }

        (LevelCount Count, FailureTable Table)[] candidates =
        [
            .. factors.SelectMany(f => Candidates([.. f], leastParts)).Where(c => c.Table.Missing() is null),
        ];
        if (candidates.Length == 0)
        {
            return new NotEnoughData("levels of one factor to compare", 2, Math.Min(1, parts));
        }

        double[] p = [.. candidates.Select(c => FisherExact.TwoSidedP(c.Table).Value)];
        IReadOnlyList<double> adjusted = BenjaminiHochberg.Adjust(p);
        CauseAssociation[] lines =
        [
            .. Enumerable
                .Range(0, p.Length)
                .OrderBy(i => adjusted[i])
                .ThenBy(i => p[i])
                .ThenByDescending(i => candidates[i].Table.SampleOddsRatio)
                .ThenBy(i => i)
                .Take(most)
                .Select(i => new CauseAssociation(
                    candidates[i].Count.Factor,
                    candidates[i].Count.Level,
                    candidates[i].Table,
                    FisherExact.Test(candidates[i].Table, confidence).Value,
                    adjusted[i],
                    [],
                    null
                )),
        ];
        int tooSmall = factors.Sum(f => f.Count(c => c.Total < leastParts));
        return new CauseReport(lines, candidates.Length, tooSmall, parts, failed);
    }

    private static IEnumerable<(LevelCount Count, FailureTable Table)> Candidates(LevelCount[] levels, int leastParts)
    {
        int failed = levels.Sum(c => c.Failed),
            total = levels.Sum(c => c.Total);
        IEnumerable<LevelCount> compared = levels.Where(c => c.Total >= leastParts);
        if (levels.Length == 2 && levels.All(c => c.Total >= leastParts))
        {
            // Both levels give the same table seen from two sides: one question, asked once.
            compared = [levels.MaxBy(c => (double)c.Failed / c.Total)];
        }

        return compared.Select(c =>
            (c, new FailureTable(c.Failed, c.Total - c.Failed, failed - c.Failed, total - failed - (c.Total - c.Failed)))
        );
    }
}
