using OxyPlot;
using PdfSharp.Drawing;
using HorizontalAlignment = OxyPlot.HorizontalAlignment;
using VerticalAlignment = OxyPlot.VerticalAlignment;

namespace Traceability.Documents.Charts;

/// <summary>Draws a chart as vectors on a PDF page, its corner at the origin of the graphics.</summary>
internal sealed class PdfCanvas(XGraphics graphics) : ClippingRenderContext
{
    private XGraphicsState? _unclipped;

    public override void DrawLine(
        IList<ScreenPoint> points,
        OxyColor stroke,
        double thickness,
        EdgeRenderingMode edgeRenderingMode,
        double[] dashArray,
        LineJoin lineJoin
    )
    {
        if (points.Count > 1 && stroke.IsVisible())
            graphics.DrawLines(Pen(stroke, thickness, dashArray, lineJoin), Points(points));
    }

    public override void DrawPolygon(
        IList<ScreenPoint> points,
        OxyColor fill,
        OxyColor stroke,
        double thickness,
        EdgeRenderingMode edgeRenderingMode,
        double[] dashArray,
        LineJoin lineJoin
    )
    {
        if (fill.IsVisible())
            graphics.DrawPolygon(new XSolidBrush(Colour(fill)), Points(points), XFillMode.Alternate);
        if (stroke.IsVisible() && thickness > 0)
            graphics.DrawPolygon(Pen(stroke, thickness, dashArray, lineJoin), Points(points));
    }

    public override void DrawText(
        ScreenPoint p,
        string text,
        OxyColor fill,
        string fontFamily,
        double fontSize,
        double fontWeight,
        double rotation,
        HorizontalAlignment horizontalAlignment,
        VerticalAlignment verticalAlignment,
        OxySize? maxSize
    )
    {
        if (string.IsNullOrEmpty(text))
            return;

        var upright = graphics.Save();
        graphics.TranslateTransform(p.X, p.Y);
        if (rotation != 0)
            graphics.RotateTransform(rotation);
        var left = ChartText.Left(text, fontSize, fontWeight, horizontalAlignment);
        graphics.DrawString(
            text,
            new XFont(ChartText.Face(fontWeight), fontSize),
            new XSolidBrush(Colour(fill)),
            left,
            ChartText.Baseline(fontSize, verticalAlignment)
        );
        graphics.Restore(upright);
    }

    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight) =>
        ChartText.Size(text, fontSize, fontWeight);

    protected override void SetClip(OxyRect clippingRectangle)
    {
        _unclipped = graphics.Save();
        graphics.IntersectClip(new XRect(clippingRectangle.Left, clippingRectangle.Top, clippingRectangle.Width, clippingRectangle.Height));
    }

    protected override void ResetClip()
    {
        if (_unclipped is not null)
            graphics.Restore(_unclipped);
        _unclipped = null;
    }

    private static XPoint[] Points(IList<ScreenPoint> points) => [.. points.Select(point => new XPoint(point.X, point.Y))];

    private static XColor Colour(OxyColor colour) => XColor.FromArgb(colour.R, colour.G, colour.B);

    private static XPen Pen(OxyColor colour, double thickness, double[]? dashes, LineJoin join)
    {
        var pen = new XPen(Colour(colour), thickness) { LineJoin = join is LineJoin.Round ? XLineJoin.Round : XLineJoin.Miter };
        if (dashes is { Length: > 0 })
            pen.DashPattern = dashes;
        return pen;
    }
}
