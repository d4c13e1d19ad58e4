using System.Globalization;
using System.Text;
using System.Xml.Linq;
using OxyPlot;
using Traceability.Documents.Drawing;
using HorizontalAlignment = OxyPlot.HorizontalAlignment;
using VerticalAlignment = OxyPlot.VerticalAlignment;

namespace Traceability.Documents.Charts;

/// <summary>
/// Draws a chart as an SVG element to be set inside a page: classes and presentation attributes only, so that a strict
/// Content-Security-Policy has nothing to refuse, and no ids, so that two charts on a page cannot clash.
/// </summary>
internal sealed class SvgCanvas : ClippingRenderContext
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly XElement _root;
    private XElement _target;

    public SvgCanvas(double width, double height, string title, string description)
    {
        _root = _target = new XElement(
            Svg + "svg",
            new XAttribute("class", "chart"),
            new XAttribute("role", "img"),
            new XAttribute("viewBox", $"0 0 {Number(width)} {Number(height)}"),
            new XAttribute("width", Number(width)),
            new XAttribute("height", Number(height)),
            new XAttribute("font-family", "Inter, sans-serif"),
            new XAttribute("fill", "none"),
            new XElement(Svg + "title", XmlText.Clean(title)),
            new XElement(Svg + "desc", XmlText.Clean(description))
        );
    }

    public override string ToString() => _root.ToString(SaveOptions.DisableFormatting);

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
            Add("path", Stroke(stroke, thickness, dashArray), new XAttribute("d", Path(points, close: false)));
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
            Add("path", Fill(fill), new XAttribute("d", Path(points, close: true)));
        if (stroke.IsVisible() && thickness > 0)
            Add("path", Stroke(stroke, thickness, dashArray), new XAttribute("d", Path(points, close: true)));
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

        // The alignment, not the left edge, is written down: a page that falls back to another font keeps its labels in place.
        var anchor = horizontalAlignment switch
        {
            HorizontalAlignment.Left => "start",
            HorizontalAlignment.Center => "middle",
            _ => "end",
        };
        var place =
            rotation == 0
                ? [new XAttribute("x", Number(p.X)), new XAttribute("y", Number(p.Y + ChartText.Baseline(fontSize, verticalAlignment)))]
                : new[]
                {
                    new XAttribute("transform", $"translate({Number(p.X)} {Number(p.Y)}) rotate({Number(rotation)})"),
                    new XAttribute("y", Number(ChartText.Baseline(fontSize, verticalAlignment))),
                };
        Add(
            "text",
            Fill(fill),
            place,
            new XAttribute("font-size", Number(fontSize)),
            new XAttribute("text-anchor", anchor),
            fontWeight > 500 ? new XAttribute("font-weight", "600") : null,
            XmlText.Clean(text)
        );
    }

    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight) =>
        ChartText.Size(text, fontSize, fontWeight);

    /// A nested svg clips to its viewport and, unlike a clip path, needs no id.
    protected override void SetClip(OxyRect clippingRectangle)
    {
        var (x, y, w, h) = (
            Number(clippingRectangle.Left),
            Number(clippingRectangle.Top),
            Number(clippingRectangle.Width),
            Number(clippingRectangle.Height)
        );
        var viewport = new XElement(
            Svg + "svg",
            new XAttribute("x", x),
            new XAttribute("y", y),
            new XAttribute("width", w),
            new XAttribute("height", h),
            new XAttribute("viewBox", $"{x} {y} {w} {h}"),
            new XAttribute("overflow", "hidden")
        );
        _root.Add(viewport);
        _target = viewport;
    }

    protected override void ResetClip()
    {
        if (!_target.HasElements && _target != _root)
            _target.Remove();
        _target = _root;
    }

    private void Add(string name, params object?[] content) => _target.Add(new XElement(Svg + name, content));

    private static XAttribute?[] Fill(OxyColor colour)
    {
        var ink = ChartInk.For(colour);
        return [new("class", ink.Class), new("fill", ink.Paint), ink.Opacity < 1 ? new("fill-opacity", Number(ink.Opacity)) : null];
    }

    private static XAttribute?[] Stroke(OxyColor colour, double thickness, double[]? dashes)
    {
        var ink = ChartInk.For(colour);
        return
        [
            new("class", ink.Class),
            new("stroke", ink.Paint),
            new("stroke-width", Number(thickness)),
            new("stroke-linejoin", "round"),
            ink.Opacity < 1 ? new("stroke-opacity", Number(ink.Opacity)) : null,
            dashes is { Length: > 0 } ? new("stroke-dasharray", string.Join(' ', dashes.Select(dash => Number(dash * thickness)))) : null,
        ];
    }

    private static string Path(IList<ScreenPoint> points, bool close)
    {
        var path = new StringBuilder();
        for (var i = 0; i < points.Count; i++)
            path.Append(i == 0 ? 'M' : 'L').Append(Number(points[i].X)).Append(' ').Append(Number(points[i].Y));
        return close ? path.Append('Z').ToString() : path.ToString();
    }

    private static string Number(double value) => Math.Round(value, 2).ToString(CultureInfo.InvariantCulture);
}
