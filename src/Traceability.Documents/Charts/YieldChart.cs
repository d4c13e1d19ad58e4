using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;
using PdfSharp.Drawing;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Charts;

/// <summary>Yield month by month: first-pass yield with its interval, rolled-throughput yield broken.</summary>
public static class YieldChart
{
    /// <summary>An svg element for a page.</summary>
    public static string ToSvg(TrendSection trend, ChartSize? size = null) =>
        ChartFrame.ToSvg(Model(trend, ChartSize.PageScale), size ?? ChartSize.Wide, "Yield over twelve months, %", Describe(trend));

    /// <summary>The same picture as vectors on a PDF page.</summary>
    public static void Draw(XGraphics graphics, XRect rect, TrendSection trend) => ChartFrame.Draw(Model(trend, 1), graphics, rect);

    /// <summary>What the picture shows, for those who do not see it.</summary>
    public static string Describe(TrendSection trend) =>
        "Yield in percent by month. "
        + string.Join(
            "; ",
            trend.Months.Select(m =>
                m.FirstPass.Value is { } value
                    ? string.Create(
                        System.Globalization.CultureInfo.InvariantCulture,
                        $"{m.Title}: first pass {100 * value:0.0} % of {m.FirstPass.Of}, rolled throughput"
                            + $" {100 * m.RolledThroughput.Value ?? 0:0.0} %"
                    )
                    : $"{m.Title}: nothing judged"
            )
        )
        + ".";

    private static PlotModel Model(TrendSection trend, double scale)
    {
        var model = ChartFrame.Model(scale);
        var months = trend.Months;
        var shown = months.SelectMany(m => new[] { m.FirstPass.Lower, m.RolledThroughput.Value }).OfType<double>().DefaultIfEmpty(0).Min();
        model.Axes.Add(
            ChartFrame.Style(
                new LinearAxis
                {
                    Minimum = -0.6,
                    Maximum = months.Count - 0.4,
                    MajorStep = 1,
                    MinorStep = 1,
                    LabelFormatter = x => x >= 0 && x < months.Count && x == Math.Floor(x) ? months[(int)x].Month : "",
                },
                AxisPosition.Bottom,
                "",
                scale
            )
        );
        model.Axes.Add(
            ChartFrame.Style(
                new LinearAxis
                {
                    Minimum = Math.Max(0, 10 * Math.Floor(10 * shown - 0.5)),
                    Maximum = 102,
                    MajorStep = shown > 0.55 ? 10 : 20,
                    MinorStep = shown > 0.55 ? 10 : 20,
                },
                AxisPosition.Left,
                "",
                scale
            )
        );

        model.Series.Add(
            Line(
                "Rolled-throughput yield",
                ChartInk.Curves[1],
                [.. months.Select((m, i) => new DataPoint(i, 100 * m.RolledThroughput.Value ?? double.NaN))],
                scale
            )
        );
        foreach (var (month, i) in months.Select((month, i) => (month, i)).Where(m => m.month.FirstPass.Value is not null))
            model.Series.Add(Interval(i, month.FirstPass, scale));
        model.Series.Add(
            Line(
                "First-pass yield with 95 % interval",
                ChartInk.Curves[0],
                [.. months.Select((m, i) => new DataPoint(i, 100 * m.FirstPass.Value ?? double.NaN))],
                scale
            )
        );
        ChartFrame.AddLegend(model, scale);
        return model;
    }

    private static LineSeries Line(string title, (ChartInk Ink, LineStyle Dash) look, IReadOnlyList<DataPoint> points, double scale)
    {
        var line = new LineSeries
        {
            Title = title,
            Color = look.Ink.Colour,
            LineStyle = look.Dash,
            StrokeThickness = 1.1 * scale,
            MarkerType = MarkerType.Square,
            MarkerSize = 1.8 * scale,
            MarkerFill = look.Ink.Colour,
        };
        line.Points.AddRange(points);
        return line;
    }

    private static LineSeries Interval(int month, ReportedShare share, double scale)
    {
        var bar = new LineSeries
        {
            Color = ChartInk.BandEdge.Colour,
            StrokeThickness = 3 * scale,
            RenderInLegend = false,
        };
        bar.Points.AddRange([new(month, 100 * share.Lower!.Value), new(month, 100 * share.Upper!.Value)]);
        return bar;
    }
}
