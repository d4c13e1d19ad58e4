using System.Globalization;
using Traceability.Documents.Certificates;
using Traceability.Documents.Drawing;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Reports;

/// <summary>Film lots with their intervals drawn; what stands out is marked by word, rule and colour.</summary>
internal static class FilmLotSections
{
    public static IEnumerable<Strip> Month(FilmLotSection film) =>
        [
            .. film.Lots.Count == 0 ? [] : Lots(film.Lots),
            Strip.Space(7),
            .. Prose.Paragraph(film.Year, TextStyle.Body, Sheet.Margin, Sheet.Inner),
            .. film.OutstandingInTheYear.Count == 0 ? [] : Lots(film.OutstandingInTheYear),
        ];

    private static IReadOnlyList<Strip> Lots(IReadOnlyList<FilmLotLine> lots)
    {
        var table = new Table(
            Sheet.Margin,
            Sheet.Inner,
            new Column("Film lot", 0.17),
            new("Started", 0.09, Right: true),
            new("Failed", 0.18),
            new("Yield", 0.09, Right: true),
            new("0 to 100 %", 0.13),
            new("95 % interval", 0.14),
            new("Against the rest", 0.2)
        ).WithHeading();
        foreach (var lot in lots)
            table.AddRow(Row(lot), fill: lot.StandsOut ? Ink.BrassPale : null);
        return table.Strips;
    }

    private static IReadOnlyList<Cell> Row(FilmLotLine lot) =>
        [
            new Cell(lot.Lot, TextStyle.Strong, lot.StandsOut ? "stands out" : null),
            new Cell(lot.Started.ToString(CultureInfo.InvariantCulture), Note: lot.InWork > 0 ? $"{lot.InWork} on their way" : null),
            new Cell(
                lot.Failed.ToString(CultureInfo.InvariantCulture),
                lot.StandsOut ? TextStyle.Alert : null,
                string.Join(", ", lot.Stages.Where(s => s.Failed > 0).Select(s => $"{s.Title} {s.Failed} of {s.Reached}"))
            ),
            ReportWords.Percent(lot.FirstPass.Value),
            ShareMark.Interval(lot.FirstPass, lot.StandsOut),
            new Cell(ReportWords.Range(lot.FirstPass), TextStyle.Note),
            new Cell(
                lot.Against,
                lot.StandsOut ? TextStyle.Alert : TextStyle.Note,
                lot.AdjustedP is { } p ? $"adjusted p {ReportWords.P(p)}" : null
            ),
        ];
}
