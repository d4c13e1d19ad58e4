using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Charts;

/// <summary>The room that a mask leaves to a curve; where a mask has no limit on one side the band runs to the frame.</summary>
internal static class MaskBand
{
    public static void Add(PlotModel model, IReadOnlyList<CertifiedMaskPoint> mask, double lowest, double highest, double scale)
    {
        var band = new PolygonAnnotation
        {
            Fill = ChartInk.Band.Colour,
            StrokeThickness = 0,
            Layer = AnnotationLayer.BelowAxes,
        };
        band.Points.AddRange(mask.Select(point => new DataPoint(point.FrequencyHz, point.UpperDb ?? highest)));
        band.Points.AddRange(mask.Reverse().Select(point => new DataPoint(point.FrequencyHz, point.LowerDb ?? lowest)));
        model.Annotations.Add(band);

        model.Series.Add(Edge(mask, point => point.UpperDb, "limits", scale));
        model.Series.Add(Edge(mask, point => point.LowerDb, null, scale));
    }

    /// A missing limit breaks the line.
    private static LineSeries Edge(
        IReadOnlyList<CertifiedMaskPoint> mask,
        Func<CertifiedMaskPoint, double?> limit,
        string? title,
        double scale
    )
    {
        var edge = new LineSeries
        {
            Title = title,
            Color = ChartInk.BandEdge.Colour,
            StrokeThickness = 0.7 * scale,
            RenderInLegend = title is not null,
        };
        edge.Points.AddRange(mask.Select(point => new DataPoint(point.FrequencyHz, limit(point) ?? double.NaN)));
        return edge;
    }
}
