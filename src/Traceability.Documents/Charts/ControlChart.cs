using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using PdfSharp.Drawing;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Charts;

/// <summary>Individual values in the order of work between their 3 sigma limits; the month asked about is shaded.</summary>
public static class ControlChart
{
    /// <summary>What the marks mean.</summary>
    public const string Legend =
        "Each point is a value in the order of work; those of the month lie in the shaded band. Line: mean; broken lines: 3 sigma."
        + " Large square: completes a rule; triangle: does not meet the limits of its route.";

    private static readonly int[] Steps = [1, 2, 5, 10, 20, 50, 100];

    /// <summary>Draws the picture as vectors on a PDF page.</summary>
    public static void Draw(XGraphics graphics, XRect rect, ReportedChart chart) => ChartFrame.Draw(Model(chart, 1), graphics, rect);

    /// <summary>What the picture shows, for those who do not see it.</summary>
    public static string Describe(ReportedChart chart) => $"{chart.Title}. {chart.Sentence}";

    private static PlotModel Model(ReportedChart chart, double scale)
    {
        var model = ChartFrame.Model(scale);
        var points = chart.Points;
        model.Axes.Add(
            ChartFrame.Style(
                new LinearAxis
                {
                    Minimum = 0,
                    Maximum = points.Count + 1,
                    MajorStep = StepOf(points.Count),
                    MinorStep = StepOf(points.Count),
                    StringFormat = "0",
                },
                AxisPosition.Bottom,
                "",
                scale
            )
        );
        var (lowest, highest) = RangeOf(chart);
        model.Axes.Add(ChartFrame.Style(new LinearAxis { Minimum = lowest, Maximum = highest }, AxisPosition.Left, "", scale));

        var month = points.Select((p, i) => (p.InMonth, Place: i + 1)).Where(p => p.InMonth).Select(p => p.Place).ToArray();
        if (month.Length > 0)
            model.Annotations.Add(
                new RectangleAnnotation
                {
                    MinimumX = month[0] - 0.5,
                    MaximumX = month[^1] + 0.5,
                    MinimumY = lowest,
                    MaximumY = highest,
                    Fill = ChartInk.Band.Colour,
                    Layer = AnnotationLayer.BelowAxes,
                }
            );
        if (chart.Limits is { } limits)
        {
            foreach (
                var (value, dash) in new[]
                {
                    (limits.Lower, LineStyle.Dash),
                    (limits.Centre, LineStyle.Solid),
                    (limits.Upper, LineStyle.Dash),
                }
            )
                model.Series.Add(Across(value, dash, points.Count + 1, scale));
        }

        model.Series.Add(Values(points, scale));
        model.Series.Add(Marked(points, p => p.Rules.Count > 0, MarkerType.Square, 2.3, ChartInk.Curves[2].Ink, scale));
        model.Series.Add(Marked(points, p => !p.Met, MarkerType.Triangle, 3.4, ChartInk.Curves[3].Ink, scale));
        return model;
    }

    private static LineSeries Across(double value, LineStyle dash, double width, double scale)
    {
        var line = new LineSeries
        {
            Color = ChartInk.BandEdge.Colour,
            LineStyle = dash,
            StrokeThickness = 0.8 * scale,
        };
        line.Points.AddRange([new(0, value), new(width, value)]);
        return line;
    }

    private static LineSeries Values(IReadOnlyList<ReportedPoint> points, double scale)
    {
        var ink = ChartInk.Curves[0].Ink.Colour;
        var line = new LineSeries
        {
            Color = ink,
            StrokeThickness = 0.7 * scale,
            MarkerType = MarkerType.Square,
            MarkerSize = 1.2 * scale,
            MarkerFill = ink,
        };
        line.Points.AddRange(points.Select((p, i) => new DataPoint(i + 1, p.Value)));
        return line;
    }

    private static LineSeries Marked(
        IReadOnlyList<ReportedPoint> points,
        Func<ReportedPoint, bool> which,
        MarkerType shape,
        double size,
        ChartInk ink,
        double scale
    )
    {
        var marks = new LineSeries
        {
            LineStyle = LineStyle.None,
            MarkerType = shape,
            MarkerSize = size * scale,
            MarkerFill = ink.Colour,
        };
        marks.Points.AddRange(points.Select((p, i) => (p, At: new DataPoint(i + 1, p.Value))).Where(m => which(m.p)).Select(m => m.At));
        return marks;
    }

    /// Room for the limits and every value; equal values get a range all the same.
    private static (double Lowest, double Highest) RangeOf(ReportedChart chart)
    {
        double[] all = [.. chart.Points.Select(p => p.Value), .. chart.Limits is { } l ? new[] { l.Lower, l.Upper } : []];
        var (lowest, highest) = (all.Min(), all.Max());
        var room = highest > lowest ? 0.08 * (highest - lowest) : Math.Max(1e-9, 0.05 * Math.Abs(highest) + 1e-9);
        return (lowest - room, highest + room);
    }

    private static double StepOf(int points) => Steps.FirstOrDefault(step => points / step <= 16, 200);
}
