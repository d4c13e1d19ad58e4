using PdfSharp.UniversalAccessibility;
using Traceability.Documents.Certificates;
using Traceability.Documents.Drawing;
using Traceability.Documents.Fonts;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Reports;

/// <summary>
/// The sections of a report in the order in which a quality lead asks: how much, how good, is it a film lot, what failed, what waits.
/// </summary>
internal static class ReportBody
{
    private const double TitleWidth = 350;

    private static readonly TextStyle Kicker = new(InterFonts.SemiBold, 9, Ink.Brass);
    private static readonly TextStyle Month = new(InterFonts.Light, 30, Ink.Black, 1.15);
    private static readonly TextStyle Period = new(InterFonts.Regular, 9.5, Ink.Soft);

    public static IReadOnlyList<Strip> Strips(MonthlyReportDocument report) =>
        [
            .. Masthead(report),
            .. Section("Finished and shipped", report.Output.None, report.Output.Computed, CountSections.Output(report.Output)),
            .. Section("Yield by model and stage", report.Yields.None, report.Yields.Computed, YieldSections.Stages(report.Yields)),
            .. Section("Film lots", report.FilmLots.None, report.FilmLots.Computed, FilmLotSections.Month(report.FilmLots)),
            .. Section("What failed most often", report.Failures.None, report.Failures.Computed, CountSections.Failures(report.Failures)),
            .. Section("Open nonconformities", report.Waiting.None, report.Waiting.Computed, CountSections.Waiting(report.Waiting)),
            .. Section("Holds in force", report.Holds.None, report.Holds.Computed, CountSections.Holds(report.Holds)),
            .. Section("Returns", report.Returns.None, report.Returns.Computed, CountSections.Returns(report.Returns)),
            .. Section("Yield over twelve months", report.Trend.None, report.Trend.Computed, YieldSections.Trend(report.Trend)),
            .. Section("Control charts", report.Control.None, report.Control.Computed, ControlSections.Charts(report.Control)),
            .. Section("Instruments", report.Instruments.None, report.Instruments.Computed, CountSections.Instruments(report.Instruments)),
        ];

    private static IEnumerable<Strip> Masthead(MonthlyReportDocument report) =>
        [
            Line(report.WorkshopName, TextStyle.Note with { Size = 8.5 }, PdfBlockLevelElementTag.Paragraph),
            Strip.Space(16),
            Line("Monthly quality report", Kicker, PdfBlockLevelElementTag.Heading1),
            Line(report.Title, Month, PdfBlockLevelElementTag.Paragraph),
            Line(report.Period, Period, PdfBlockLevelElementTag.Paragraph),
            Strip.Space(14),
            .. report.InventedDataNotice is { Length: > 0 } notice ? Certificates.Masthead.Notice(notice) : [],
            .. report.Nothing is { } nothing ? Prose.Paragraph(nothing, TextStyle.Strong, Sheet.Margin, Sheet.Inner) : [],
        ];

    private static IEnumerable<Strip> Section(string title, string? none, string computed, IEnumerable<Strip> body) =>
        [
            .. Prose.Heading(title, Sheet.Margin, Sheet.Inner),
            .. Prose.Paragraph(none, TextStyle.Body, Sheet.Margin, Sheet.Inner),
            .. body,
            Strip.Space(3),
            .. Prose.Paragraph($"How this was computed: {computed}", TextStyle.Note, Sheet.Margin, Sheet.Inner),
        ];

    private static Strip Line(string text, TextStyle style, PdfBlockLevelElementTag tag)
    {
        var lines = LineBreaker.Break(text, style, TitleWidth);
        return new Strip(
            lines.Count * style.LineHeight,
            (canvas, top) => canvas.Block(tag, () => canvas.Lines(lines, style, Sheet.Margin, top))
        );
    }
}
