using Traceability.Domain.Quality.FilmLots;

namespace Traceability.Domain.Quality.Reports;

/// <summary>Film lots of the month, and those of the year that stand out.</summary>
internal static class MonthFilmLots
{
    private const double FalseDiscoveryRate = 0.05;

    public static FilmLotSection Of(MonthlyReportFacts facts, ReportWords words)
    {
        var lots = FilmLotFailureReport.Of(facts.Fates).Lots.Where(l => l.Started > 0).Select(LineOf)
            .OrderByDescending(l => l.StandsOut).ThenBy(l => l.FirstPass.Value ?? 2).ThenByDescending(l => l.Failed).ThenBy(l => l.Lot, StringComparer.Ordinal).ToArray();
        var year = FilmLotFailureReport.Of(facts.FatesOfTheYear).Lots.Where(l => l.Started > 0).Select(LineOf).ToArray();
        FilmLotLine[] outstanding = [.. year.Where(l => l.StandsOut).OrderBy(l => l.AdjustedP).ThenBy(l => l.Lot, StringComparer.Ordinal)];
        return new(
            lots, YearOf(year, outstanding.Length, facts), outstanding, lots.Length == 0 ? $"No film was fitted {words.InTheMonth}." : null,
            "Counted are diaphragms whose film was fitted in the month, each followed into the capsule and the unit that it is in until the report was drawn up. Failed: any first failure, of a stage, reported by hand or a return, "
            + "reworked or not; passed: finished as a diaphragm without a failure so far; the rest is in work. First-pass yield: passed of judged, Wilson's 95 % interval. Compared with all other lots of the same time: inside each builder "
            + "by Cochran-Mantel-Haenszel where several can be compared, else Fisher's exact test; p adjusted over all lots (Benjamini-Hochberg). A lot stands out when it fails more often than the rest and its adjusted p is at most 0.05.");
    }

    private static string YearOf(FilmLotLine[] year, int outstanding, MonthlyReportFacts facts) => year.Length == 0
        ? $"No film was fitted in the twelve months up to {facts.Month.Title}."
        : $"In the twelve months up to {facts.Month.Title} {ReportWords.Counted(year.Sum(l => l.Started), "diaphragm")} of {ReportWords.Counted(year.Length, "film lot")} were started; "
            + (outstanding == 0 ? "no lot stands out among them." : $"{(outstanding == 1 ? "1 lot stands" : $"{outstanding} lots stand")} out among them:");

    private static FilmLotLine LineOf(FilmLotFailures lot) => new(
        lot.Lot, lot.Started, lot.InWork, lot.Judged, lot.Failed, lot.FailedByStage, ReportedShare.FirstPass(lot.PassedFirst, lot.Judged), lot.AdjustedP,
        AgainstOf(lot), lot.IsWorse(FalseDiscoveryRate));

    private static string AgainstOf(FilmLotFailures lot) =>
        lot.P is null ? lot.AgainstTheRest.Match(_ => "not compared", missing => missing.ToString())
        : lot.IsWorse(FalseDiscoveryRate) ? "fails more often"
        : lot.AdjustedP <= FalseDiscoveryRate ? "fails less often"
        : "no clear difference";
}
