using Traceability.Documents.Certificates;
using Traceability.Documents.Charts;
using Traceability.Documents.Drawing;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Reports;

/// <summary>Control charts, each with its sentence, and the names of those that are not drawn.</summary>
internal static class ControlSections
{
    private const double ChartHeight = 120;

    public static IEnumerable<Strip> Charts(ControlSection control) =>
        [
            .. control.Charts.Count == 0 ? [] : Prose.Paragraph(ControlChart.Legend, TextStyle.Note, Sheet.Margin, Sheet.Inner),
            .. control.Charts.SelectMany(chart =>
                AcousticSections.Picture(
                    chart.Title,
                    ChartHeight,
                    ControlChart.Describe(chart),
                    (graphics, rect) => ControlChart.Draw(graphics, rect, chart),
                    chart.Sentence
                )
            ),
            Strip.Space(3),
            .. LeftOut(control.LeftOut),
        ];

    private static IEnumerable<Strip> LeftOut(IReadOnlyList<LeftOutStage> stages)
    {
        var count = stages.Sum(stage => stage.Characteristics.Count);
        return count == 0
            ? []
            :
            [
                .. Prose.SubHeading(
                    $"Left out: {count} main {(count == 1 ? "characteristic" : "characteristics")}, with values in the month",
                    Sheet.Margin,
                    Sheet.Inner
                ),
                .. stages.SelectMany(stage =>
                    Prose.Paragraph(
                        $"{stage.Place}: {string.Join("; ", stage.Characteristics)}.",
                        TextStyle.Note,
                        Sheet.Margin,
                        Sheet.Inner
                    )
                ),
            ];
    }
}
