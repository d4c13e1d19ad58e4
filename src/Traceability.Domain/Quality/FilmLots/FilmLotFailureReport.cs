using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.ManyTests;
using Traceability.Domain.Quality.Yields;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>
/// Where are we failing, by film lot: one line per lot, each compared with all the others.
/// </summary>
/// <remarks>
/// Counting is one pass over the rows; every test works on the counts. Any number of lots is a correct question: without lots the report is
/// empty, a single lot has nothing to be compared with, a lot still in work has no yield, and each says so. Checked by
/// <c>FilmLotFailureTests</c>; the statistics it uses have their own outside checks.
/// </remarks>
/// <param name="Lots">One per lot, in order of name.</param>
/// <param name="Stages">Every stage at which anything first failed, in order of first appearance.</param>
/// <param name="Strata">How many strata the rows hold.</param>
public sealed record FilmLotFailureReport(IReadOnlyList<FilmLotFailures> Lots, IReadOnlyList<string> Stages, int Strata)
{
    /// <summary>Counts, compares and adjusts.</summary>
    /// <param name="fates">The diaphragms, singly or counted.</param>
    /// <param name="stages">First attempts by stage in route order, for the rolled-throughput yield; none: that yield is "not enough data".</param>
    /// <param name="confidence">The confidence level of all intervals, between 0 and 1.</param>
    public static FilmLotFailureReport Of(
        IEnumerable<LotFate> fates, IReadOnlyCollection<LotStageCount>? stages = null, double confidence = Interval.UsualConfidence)
    {
        Interval.RequireConfidence(confidence);
        var lots = new SortedDictionary<string, LotTally>(StringComparer.Ordinal);
        var everything = new LotTally();
        foreach (LotFate fate in fates)
        {
            if (!lots.TryGetValue(fate.Lot, out LotTally? tally))
            {
                lots.Add(fate.Lot, tally = new LotTally());
            }

            tally.Add(fate);
            everything.Add(fate);
        }

        ILookup<string, LotStageCount> stagesOf = (stages ?? []).ToLookup(s => s.Lot);
        FilmLotFailures[] lines = [.. lots.Select(lot => Line(lot.Key, lot.Value, everything, [.. stagesOf[lot.Key]], confidence))];
        return new FilmLotFailureReport(Adjusted(lines), [.. everything.FailedByStage.Keys], everything.ByStratum.Count);
    }

    private static FilmLotFailures Line(
        string lot, LotTally tally, LotTally everything, IReadOnlyList<LotStageCount> stages, double confidence)
    {
        Answer<FisherExactResult> against = FisherExact.Test(
            Table(tally.Failed, tally.PassedFirst, everything.Failed, everything.PassedFirst), confidence);
        Answer<CochranMantelHaenszelResult> within = CochranMantelHaenszel.Test(
            [.. tally.ByStratum.Select(s => (Here: s.Value, All: everything.ByStratum[s.Key]))
                .Select(s => Table(s.Here.Failed, s.Here.Passed, s.All.Failed, s.All.Passed))], confidence);
        bool stratified = everything.ByStratum.Count > 1 && within.IsKnown;
        double? p = stratified ? within.Value.PCorrected : against.IsKnown ? against.Value.P : null;
        return new FilmLotFailures(
            lot, tally.Started, tally.InWork, tally.PassedFirst, tally.PassedAfterRework, tally.Failed, tally.FailedByStage,
            FirstPassYield.Of(tally.PassedFirst, tally.PassedFirst + tally.Failed, confidence),
            RolledThroughputYield.Of([.. stages.Select(s => (s.PassedFirst, s.Judged))], confidence),
            against, within, stratified, p, null)
        {
            LastFailure = tally.LastFailure,
        };
    }

    private static FailureTable Table(int failed, int passed, int allFailed, int allPassed) =>
        new(failed, passed, allFailed - failed, allPassed - passed);

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
