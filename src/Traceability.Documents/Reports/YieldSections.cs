using Traceability.Documents.Certificates;
using Traceability.Documents.Charts;
using Traceability.Documents.Drawing;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Reports;

/// <summary>Yields stage by stage, and over twelve months as a chart with the numbers under it.</summary>
internal static class YieldSections
{
    private const double TrendHeight = 165;

    public static IEnumerable<Strip> Stages(YieldSection yields)
    {
        if (yields.Models.Count == 0)
            return [];

        var table = new Table(
            Sheet.Margin,
            Sheet.Inner,
            new Column("Stage", 0.24),
            new("Passed first", 0.11, Right: true),
            new("Yield", 0.09, Right: true),
            new("0 to 100 %", 0.12),
            new("95 % interval", 0.14),
            new(yields.MonthBefore, 0.12),
            new("Against it", 0.18)
        ).WithHeading();
        foreach (var model in yields.Models)
        {
            table.AddGroup(model.Model);
            table.AddRow(Whole("All stages, first pass", model.FirstPass, model.FirstPassBefore), fill: Ink.BrassPale);
            table.AddRow(Whole("Rolled throughput", model.RolledThroughput, model.RolledThroughputBefore), fill: Ink.BrassPale);
            foreach (var line in model.Stages)
                table.AddRow(Stage(line));
        }
        return table.Strips;
    }

    public static IEnumerable<Strip> Trend(TrendSection trend)
    {
        if (trend.None is not null)
            return [];

        var table = new Table(
            Sheet.Margin,
            Sheet.Inner,
            new Column("Month", 0.2),
            new("Passed first", 0.14, Right: true),
            new("First-pass yield", 0.12, Right: true),
            new("95 % interval", 0.18),
            new("Rolled throughput", 0.14, Right: true),
            new("95 % interval, stages", 0.22)
        ).WithHeading();
        foreach (var month in trend.Months)
        {
            table.AddRow([
                new Cell(month.Title, TextStyle.Strong),
                ReportWords.Counts(month.FirstPass),
                ReportWords.Percent(month.FirstPass.Value),
                month.FirstPass.Of == 0 ? "no first verdict" : ReportWords.Range(month.FirstPass),
                ReportWords.Percent(month.RolledThroughput.Value),
                month.FirstPass.Of == 0
                    ? ""
                    : new Cell(ReportWords.Range(month.RolledThroughput), Note: ReportWords.Counts(month.RolledThroughput)),
            ]);
        }
        return
        [
            .. AcousticSections.Picture(
                "First verdicts of all models by month, yield in %",
                TrendHeight,
                YieldChart.Describe(trend),
                (graphics, rect) => YieldChart.Draw(graphics, rect, trend),
                "First-pass yield with its 95 % interval; rolled-throughput yield broken. A month without first verdicts is left open."
            ),
            .. table.Strips,
        ];
    }

    private static IReadOnlyList<Cell> Whole(string title, ReportedShare share, ReportedShare before) =>
        [
            new Cell(title, TextStyle.Strong),
            ReportWords.Counts(share),
            new Cell(ReportWords.Percent(share.Value), TextStyle.Strong),
            ShareMark.Interval(share),
            new Cell(ReportWords.Range(share), TextStyle.Note),
            Before(before),
            "",
        ];

    private static IReadOnlyList<Cell> Stage(StageYieldLine line) =>
        [
            new Cell(line.Title, Note: line.Kind.Replace('-', ' ')),
            ReportWords.Counts(line.Share),
            ReportWords.Percent(line.Share.Value),
            ShareMark.Interval(line.Share, line.Change == "worse"),
            new Cell(ReportWords.Range(line.Share), TextStyle.Note),
            Before(line.Before),
            new Cell(
                line.Change,
                line.Change is "worse" or "better" ? TextStyle.Alert : TextStyle.Note,
                line.AdjustedP is { } p ? $"adjusted p {ReportWords.P(p)}" : null
            ),
        ];

    private static Cell Before(ReportedShare before) =>
        before.Value is null
            ? new Cell(CertificateWords.None, TextStyle.Note)
            : new Cell(ReportWords.Percent(before.Value), TextStyle.Note, ReportWords.Counts(before));
}
