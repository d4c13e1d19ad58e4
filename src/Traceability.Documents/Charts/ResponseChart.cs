using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Series;
using PdfSharp.Drawing;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Charts;

/// <summary>Level against frequency, with the mask that judged it as a shaded band.</summary>
public static class ResponseChart
{
    /// A picture shows the audible range even when less was measured, and this span of level even when the curve is flat.
    private const double LowestHz = 20,
        HighestHz = 20_000,
        LeastSpanDb = 20,
        MostSpanDb = 80;

    /// <summary>An svg element for a page; it carries no id, script or style, and takes its text colour from the page.</summary>
    public static string ToSvg(CertifiedCurve curve, ChartSize? size = null) =>
        ChartFrame.ToSvg(Model(curve, ChartSize.PageScale), size ?? ChartSize.Wide, curve.Title, Describe(curve));

    /// <summary>The same picture as vectors on a PDF page.</summary>
    public static void Draw(XGraphics graphics, XRect rect, CertifiedCurve curve) => ChartFrame.Draw(Model(curve, 1), graphics, rect);

    /// <summary>What the picture shows, for those who do not see it.</summary>
    public static string Describe(CertifiedCurve curve)
    {
        var traces = string.Join(
            "; ",
            curve
                .Traces.Where(trace => trace.Points.Count > 0)
                .Select(trace =>
                    string.Create(
                        System.Globalization.CultureInfo.InvariantCulture,
                        $"{trace.Name}: {trace.Points.Count} points from {trace.Points[0].FrequencyHz:0.#} Hz to"
                            + $" {trace.Points[^1].FrequencyHz:0.#} Hz, {trace.Points.Min(p => p.LevelDb):0.0} dB to"
                            + $" {trace.Points.Max(p => p.LevelDb):0.0} dB"
                    )
                )
        );
        var mask = curve.Mask.Count > 0 ? "With the limits that judged it." : "Without limits.";
        return $"Level in decibels against frequency. {(traces.Length > 0 ? traces : "No points")}. {mask} {curve.ReferenceConditions}";
    }

    private static PlotModel Model(CertifiedCurve curve, double scale)
    {
        var model = ChartFrame.Model(scale);
        var frequencies = curve
            .Traces.SelectMany(trace => trace.Points)
            .Select(point => point.FrequencyHz)
            .Where(f => f > 0 && double.IsFinite(f))
            .ToArray();
        var frequency = ChartFrame.Style(new FrequencyAxis(), AxisPosition.Bottom, "Frequency, Hz", scale);
        (frequency.Minimum, frequency.Maximum) = (
            Math.Min(LowestHz, frequencies.DefaultIfEmpty(LowestHz).Min()),
            Math.Max(HighestHz, frequencies.DefaultIfEmpty(HighestHz).Max())
        );

        var level = ChartFrame.Style(
            new LinearAxis
            {
                MajorStep = 5,
                MinorStep = 1,
                LabelFormatter = ChartFrame.Signed,
            },
            AxisPosition.Left,
            "Level, dB",
            scale
        );
        (level.Minimum, level.Maximum) = LevelRange(curve);
        (level.MajorStep, level.MinorStep) = level.Maximum - level.Minimum > 40 ? (10, 5) : (5, 1);
        model.Axes.Add(frequency);
        model.Axes.Add(level);

        if (curve.Mask.Count > 1)
            MaskBand.Add(model, curve.Mask, level.Minimum, level.Maximum, scale);
        for (var i = 0; i < curve.Traces.Count; i++)
            model.Series.Add(Line(curve.Traces[i], ChartInk.Curves[i % ChartInk.Curves.Length], scale));
        if (curve.Traces.Count > 0)
            ChartFrame.AddLegend(model, scale);
        return model;
    }

    private static LineSeries Line(ResponseTrace trace, (ChartInk Ink, LineStyle Dash) look, double scale)
    {
        var line = new LineSeries
        {
            Title = trace.Name,
            Color = look.Ink.Colour,
            LineStyle = look.Dash,
            StrokeThickness = 1.1 * scale,
            LineJoin = LineJoin.Round,
        };
        line.Points.AddRange(
            trace.Points.Where(p => p.FrequencyHz > 0 && double.IsFinite(p.LevelDb)).Select(p => new DataPoint(p.FrequencyHz, p.LevelDb))
        );
        return line;
    }

    private static (double Lowest, double Highest) LevelRange(CertifiedCurve curve)
    {
        var levels = curve
            .Traces.SelectMany(trace => trace.Points)
            .Select(point => point.LevelDb)
            .Concat(curve.Mask.SelectMany(point => new[] { point.LowerDb, point.UpperDb }).OfType<double>())
            .Where(double.IsFinite)
            .DefaultIfEmpty(0)
            .ToArray();
        var highest = 5 * Math.Ceiling((levels.Max() + 1) / 5);
        var lowest = Math.Max(5 * Math.Floor((levels.Min() - 1) / 5), highest - MostSpanDb);
        var missing = Math.Max(0, LeastSpanDb - (highest - lowest));
        return (lowest - 5 * Math.Ceiling(missing / 10), highest + 5 * Math.Floor(missing / 10));
    }
}
