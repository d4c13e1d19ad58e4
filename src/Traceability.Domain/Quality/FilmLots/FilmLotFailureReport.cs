using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.ManyTests;
using Traceability.Domain.Quality.Yields;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>
/// Where are we failing, by film lot: one line per lot, each compared with all the others, stage by stage.
/// </summary>
/// <remarks>
/// Counting is one pass over the rows; every test works on the counts. Any number of lots is a correct question: without lots the report is
/// empty, a single lot has nothing to be compared with, a lot that reached no stage has no yield, and each says so. Every part is compared
/// only at the stages that it reached: lots of different age are comparable. A capsule with films of two lots stands on both sides of their
/// comparison, which makes a difference look smaller, not larger. Checked by <c>FilmLotFailureTests</c>; the statistics it uses have their
/// own outside checks.
/// </remarks>
/// <param name="Lots">One per lot, in order of name.</param>
/// <param name="All">The yield of all lots together.</param>
/// <param name="Strata">How many stages, each taken as often as there are strata in it, were counted.</param>
public sealed record FilmLotFailureReport(IReadOnlyList<FilmLotFailures> Lots, Computed<YieldOverStages> All, int Strata)
{
    /// <summary>Counts, compares and adjusts.</summary>
    /// <param name="film">The diaphragms, and how many came to every stage.</param>
    /// <param name="confidence">The confidence level of all intervals, between 0 and 1.</param>
    public static FilmLotFailureReport Of(FilmCohort film, double confidence = Interval.UsualConfidence)
    {
        Interval.RequireConfidence(confidence);
        var lots = new SortedDictionary<string, LotTally>(StringComparer.Ordinal);
        foreach (LotFate fate in film.Fates)
        {
            if (!lots.TryGetValue(fate.Lot, out LotTally? tally))
            {
                lots.Add(fate.Lot, tally = new LotTally());
            }

            tally.Add(fate);
        }

        var everything = film
            .Stages.GroupBy(Stratum)
            .ToDictionary(g => g.Key, g => (Reached: g.Sum(s => s.Reached), Failed: g.Sum(s => s.Failed)));
        ILookup<string, LotStageCount> stagesOf = film.Stages.ToLookup(s => s.Lot);
        FilmLotFailures[] lines = [.. lots.Select(lot => Line(lot.Key, lot.Value, [.. stagesOf[lot.Key]], everything, confidence))];
        return new FilmLotFailureReport(Adjusted(lines), YieldOf(film.Stages, confidence), everything.Count);
    }

    private static (string Stage, string Stratum) Stratum(LotStageCount s) => (s.Code, s.Stratum);

    private static FilmLotFailures Line(
        string lot,
        LotTally tally,
        LotStageCount[] stages,
        Dictionary<(string, string), (int Reached, int Failed)> everything,
        double confidence
    )
    {
        FailureTable[] tables = [.. stages.Select(s => Table(s.Reached, s.Failed, everything[Stratum(s)]))];
        FailureTable[] comparable = [.. tables.Where(t => t.Missing() is null)];
        FailureTable together = comparable is [var only]
            ? only
            : new(
                tables.Sum(t => t.FailedHere),
                tables.Sum(t => t.PassedHere),
                tables.Sum(t => t.FailedElsewhere),
                tables.Sum(t => t.PassedElsewhere)
            );
        Computed<CochranMantelHaenszelResult> within = CochranMantelHaenszel.Test(tables, confidence);
        Computed<FisherExactResult> against =
            comparable.Length > 0 || together.Missing() is not null ? FisherExact.Test(together, confidence) : within.Missing!;
        double? p = comparable.Length switch
        {
            0 => null,
            1 => against.Value.P,
            _ => within.Value.PCorrected,
        };
        return new FilmLotFailures(
            lot,
            tally.Started,
            tally.OnItsWay,
            tally.Judged,
            tally.PassedFirst,
            tally.PassedAfterRework,
            tally.Failed,
            tally.FailedByPlace,
            [.. ByStage(stages)],
            YieldOf(stages, confidence),
            against,
            within,
            comparable.Length > 1,
            p,
            null
        )
        {
            LastFailure = tally.LastFailure,
        };
    }

    private static IEnumerable<LotStageCount> ByStage(IEnumerable<LotStageCount> stages) =>
        stages
            .GroupBy(s => s.Code)
            .Select(g => g.First() with { Stratum = "", Reached = g.Sum(s => s.Reached), Failed = g.Sum(s => s.Failed) });

    private static Computed<YieldOverStages> YieldOf(IEnumerable<LotStageCount> stages, double confidence) =>
        YieldOverStages.Of(ByStage(stages.Where(s => !s.IsAside)).Select(s => (s.Reached, s.Failed)), confidence);

    private static FailureTable Table(int reached, int failed, (int Reached, int Failed) all) =>
        new(failed, reached - failed, all.Failed - failed, all.Reached - all.Failed - (reached - failed));

    private static FilmLotFailures[] Adjusted(FilmLotFailures[] lines)
    {
        int[] known = [.. Enumerable.Range(0, lines.Length).Where(i => lines[i].P is not null)];
        IReadOnlyList<double> adjusted = BenjaminiHochberg.Adjust([.. known.Select(i => lines[i].P!.Value)]);
        for (int i = 0; i < known.Length; i++)
        {
            lines[known[i]] = lines[known[i]] with { AdjustedP = adjusted[i] };
        }

        return lines;
    }
}
