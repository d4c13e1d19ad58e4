using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using PdfSharp.Drawing;
using Traceability.Domain.Certificates;
using Traceability.Domain.Values;

namespace Traceability.Documents.Charts;

/// <summary>A climate soak over time: temperature above, humidity below, each with the tolerance of every phase as a band.</summary>
public static class SoakChart
{
    private const string TemperatureKey = "temperature",
        HumidityKey = "humidity";

    /// <summary>An svg element for a page; it carries no id, script or style, and takes its text colour from the page.</summary>
    public static string ToSvg(SoakRecord soak, ChartSize? size = null) =>
        ChartFrame.ToSvg(Model(soak, ChartSize.PageScale), size ?? ChartSize.Wide, soak.Title, Describe(soak));

    /// <summary>The same picture as vectors on a PDF page.</summary>
    public static void Draw(XGraphics graphics, XRect rect, SoakRecord soak) => ChartFrame.Draw(Model(soak, 1), graphics, rect);

    /// <summary>What the picture shows, for those who do not see it.</summary>
    public static string Describe(SoakRecord soak)
    {
        var phases = string.Join(
            ", ",
            soak.Phases.Select(phase =>
                string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"{phase.Name} at {phase.TemperatureC:0.#} °C ± {phase.TemperatureToleranceK:0.#} K for"
                        + $" {(phase.To - phase.From).TotalHours:0.0} h"
                )
            )
        );
        return $"Temperature and humidity against time, {soak.Samples.Count} samples. Phases: {(phases.Length > 0 ? phases : "none")}."
            + $" {soak.Conclusion}";
    }

    private static PlotModel Model(SoakRecord soak, double scale)
    {
        var model = ChartFrame.Model(scale);
        var start =
            soak.Samples.Count > 0 ? soak.Samples[0].At
            : soak.Phases.Count > 0 ? soak.Phases[0].From
            : default;
        var humid = soak.Samples.Any(sample => sample.HumidityPct is not null);
        AddAxes(model, soak, start, humid, scale);

        foreach (var phase in soak.Phases)
            AddPhase(model, phase, start, humid, scale);
        AddTrace(model, soak, start, TemperatureKey, sample => sample.TemperatureC, ChartInk.Curves[0].Ink, scale);
        if (humid)
            AddTrace(model, soak, start, HumidityKey, sample => sample.HumidityPct ?? double.NaN, ChartInk.Curves[2].Ink, scale);
        return model;
    }

    private static void AddAxes(PlotModel model, SoakRecord soak, DateTimeOffset start, bool humid, double scale)
    {
        var hours = soak.Samples.Select(sample => (sample.At - start).TotalHours).DefaultIfEmpty(1).Max();
        var step = new[] { 0.25, 0.5, 1, 2, 4, 6, 12, 24, 48, 96 }.FirstOrDefault(step => hours / step <= 16, 168);
        var since = WorkshopCalendar.WithZone(start);
        model.Axes.Add(
            ChartFrame.Style(
                new LinearAxis
                {
                    Minimum = 0,
                    Maximum = Math.Max(hours, 0.1),
                    MajorStep = step,
                    MinorStep = step,
                },
                AxisPosition.Bottom,
                $"Hours since {since}",
                scale
            )
        );

        var (coldest, warmest) = TemperatureRange(soak);
        var temperature = ChartFrame.Style(
            new LinearAxis
            {
                Key = TemperatureKey,
                Minimum = coldest,
                Maximum = warmest,
                MajorStep = 20,
                MinorStep = 10,
                LabelFormatter = ChartFrame.Signed,
            },
            AxisPosition.Left,
            "°C",
            scale
        );
        temperature.StartPosition = humid ? 0.44 : 0;
        model.Axes.Add(temperature);
        if (humid)
        {
            var humidity = ChartFrame.Style(
                new LinearAxis
                {
                    Key = HumidityKey,
                    Minimum = 0,
                    Maximum = 100,
                    MajorStep = 50,
                    MinorStep = 25,
                },
                AxisPosition.Left,
                "% RH",
                scale
            );
            humidity.EndPosition = 0.38;
            model.Axes.Add(humidity);
        }
    }

    /// Leaves room above the curve for the names of the phases.
    private static (double Coldest, double Warmest) TemperatureRange(SoakRecord soak)
    {
        var seen = soak
            .Samples.Select(sample => sample.TemperatureC)
            .Where(double.IsFinite)
            .Concat(
                soak.Phases.SelectMany(phase =>
                    new[] { phase.TemperatureC - phase.TemperatureToleranceK, phase.TemperatureC + phase.TemperatureToleranceK }
                )
            )
            .DefaultIfEmpty(20)
            .ToArray();
        return (10 * Math.Floor((seen.Min() - 2) / 10), 10 * Math.Ceiling((seen.Max() + 2) / 10) + 10);
    }

    private static void AddPhase(PlotModel model, CertifiedPhase phase, DateTimeOffset start, bool humid, double scale)
    {
        var (from, to) = ((phase.From - start).TotalHours, (phase.To - start).TotalHours);
        AddTolerance(model, TemperatureKey, from, to, phase.TemperatureC, phase.TemperatureToleranceK, scale);
        if (humid && phase is { HumidityPct: { } asked, HumidityTolerancePct: { } tolerance })
            AddTolerance(model, HumidityKey, from, to, asked, tolerance, scale);

        model.Annotations.Add(
            new TextAnnotation
            {
                Text = phase.Name,
                TextColor = ChartInk.Text.Colour,
                FontSize = ChartFrame.TextSize * scale,
                FontWeight = 600,
                Stroke = OxyColors.Transparent,
                StrokeThickness = 0,
                YAxisKey = TemperatureKey,
                TextPosition = new DataPoint((from + to) / 2, model.Axes[1].Maximum),
                TextHorizontalAlignment = HorizontalAlignment.Center,
                TextVerticalAlignment = VerticalAlignment.Top,
            }
        );
    }

    private static void AddTolerance(PlotModel model, string axis, double from, double to, double asked, double tolerance, double scale) =>
        model.Annotations.Add(
            new RectangleAnnotation
            {
                MinimumX = from,
                MaximumX = to,
                MinimumY = asked - tolerance,
                MaximumY = asked + tolerance,
                YAxisKey = axis,
                Fill = ChartInk.Band.Colour,
                Stroke = ChartInk.BandEdge.Colour,
                StrokeThickness = 0.5 * scale,
                Layer = AnnotationLayer.BelowSeries,
            }
        );

    private static void AddTrace(
        PlotModel model,
        SoakRecord soak,
        DateTimeOffset start,
        string axis,
        Func<CertifiedSample, double> value,
        ChartInk ink,
        double scale
    )
    {
        var line = new LineSeries
        {
            Color = ink.Colour,
            StrokeThickness = 0.9 * scale,
            LineJoin = LineJoin.Round,
            YAxisKey = axis,
        };
        line.Points.AddRange(
            Thinning.KeepExtremes(soak.Samples.Select(sample => new DataPoint((sample.At - start).TotalHours, value(sample))))
        );
        model.Series.Add(line);
    }
}
