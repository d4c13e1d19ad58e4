using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Quality.Reports;

/// <summary>Film lots of the month, and those of the year that stand out.</summary>
internal static class MonthFilmLots
{
    private const double FalseDiscoveryRate = 0.05;

    public static FilmLotSection Of(MonthlyReportFacts facts, MonthWords words)
    {
        var lots = FilmLotFailureReport
            .Of(facts.Film)
            .Lots.Where(l => l.Started > 0)
            .Select(l => LineOf(l, words.Stages))
            .OrderByDescending(l => l.StandsOut)
            .ThenBy(l => l.FirstPass.Value ?? 2)
            .ThenByDescending(l => l.Failed)
            .ThenBy(l => l.Lot, StringComparer.Ordinal)
            .ToArray();
        var year = FilmLotFailureReport
            .Of(facts.FilmOfTheYear)
            .Lots.Where(l => l.Started > 0)
            .Select(l => LineOf(l, words.Stages))
            .ToArray();
        FilmLotLine[] outstanding = [.. year.Where(l => l.StandsOut).OrderBy(l => l.AdjustedP).ThenBy(l => l.Lot, StringComparer.Ordinal)];
        return new(
            lots,
            YearOf(year, outstanding.Length, facts),
            outstanding,
            lots.Length == 0 ? $"No film was fitted {words.InTheMonth}." : null,
            "Counted are diaphragms whose film was fitted in the month, each followed into the capsule and the unit that it is in until"
                + " the report was drawn up; from the capsule on, capsules and units are counted, and one with two "
                + "diaphragms of a lot counts once. Failed: no pass at the first verdict of a stage, or reported by hand; what has"
                + " neither failed nor got through its unit's last stage is on its way. Yield: the product over the stages of (reached"
                + " - failed) of reached, "
                + "Greenwood's 95 % interval (log-log), so that what has not reached a stage counts neither way there. Compared with"
                + " all other lots of the same time inside every stage and every builder by Mantel and Haenszel, or by Fisher's exact "
                + "test where only one can be compared; returns from the field are compared as a stage of their own and are not part of"
                + " the yield; p adjusted over all lots (Benjamini-Hochberg). A lot stands out when it fails more often than the rest"
                + " and its adjusted p is at most 0.05."
        );
    }

    private static string YearOf(FilmLotLine[] year, int outstanding, MonthlyReportFacts facts) =>
        year.Length == 0
            ? $"No film was fitted in the twelve months up to {facts.Month.Title}."
            : $"In the twelve months up to {facts.Month.Title} {MonthWords.Counted(year.Sum(l => l.Started), "diaphragm")} of"
                + $" {MonthWords.Counted(year.Length, "film lot")} were started; "
                + (
                    outstanding == 0
                        ? "no lot stands out among them."
                        : $"{(outstanding == 1 ? "1 lot stands" : $"{outstanding} lots stand")} out among them:"
                );

    private static FilmLotLine LineOf(FilmLotFailures lot, StageNames names) =>
        new(
            lot.Lot,
            lot.Started,
            lot.OnItsWay,
            lot.Judged,
            lot.Failed,
            lot.FailedByPlace,
            [
                .. FilmLotSentence
                    .InOrder(lot.Stages, names)
                    .Select(s => new FilmStageLine(s.Code, FilmLotSentence.TitleOf(s, names), s.Reached, s.Failed)),
            ],
            ReportedShare.OverStages(lot.Yield),
            lot.AdjustedP,
            AgainstOf(lot),
            lot.IsWorse(FalseDiscoveryRate),
            FilmLotSentence.Of(lot, names)
        );

    private static string AgainstOf(FilmLotFailures lot) =>
        lot.P is null ? lot.AgainstTheRest.Match(_ => "not compared", missing => missing.ToString())
        : lot.IsWorse(FalseDiscoveryRate) ? "fails more often"
        : lot.AdjustedP <= FalseDiscoveryRate ? "fails less often"
        : "no clear difference";
}
