using System.Numerics;
using System.Xml.Linq;

namespace Traceability.Documents.Logos;

/// <summary>All shapes of a picture, in the order in which they are painted.</summary>
internal static class SvgShapes
{
    public static IEnumerable<SvgShape> Of(XElement root, XNamespace svg)
    {
        var classes = SvgStyle.Classes(string.Join('\n', root.Descendants(svg + "style").Select(s => s.Value)));
        return Inside(root, SvgStyle.Initial.Inside(root, classes), Matrix3x2.Identity);

        IEnumerable<SvgShape> Inside(XElement parent, SvgStyle style, Matrix3x2 transform)
        {
            foreach (var element in parent.Elements().Where(e => e.Name.Namespace == svg))
            {
                var name = element.Name.LocalName;
                if (name is not "g" && !SvgRules.Drawn.Contains(name))
                    continue;
                var own = style.Inside(element, classes);
                var placed = SvgTransform.Of(element.Attribute("transform")?.Value) * transform;
                if (own.Hidden)
                    continue;
                if (name == "g")
                {
                    foreach (var shape in Inside(element, own, placed))
                        yield return shape;
                    continue;
                }

                var outlines = OutlinesOf(element).Where(o => o.Curves.Count > 0).ToList();
                if (outlines.Count > 0 && (own.Fill is not null || own.Stroke is not null))
                    yield return new(
                        [.. outlines.Select(o => o with { Curves = [.. o.Curves.Select(c => c.By(placed))] })],
                        own,
                        Math.Sqrt(Math.Abs(placed.GetDeterminant()))
                    );
            }
        }
    }

    private static IEnumerable<SvgOutline> OutlinesOf(XElement e)
    {
        float N(string attribute) => (float)SvgNumbers.Length(e, attribute, 0);
        return e.Name.LocalName switch
        {
            "path" => new SvgPathData(e.Attribute("d")?.Value ?? "").Outlines(),
            "circle" => Ellipse(N("cx"), N("cy"), N("r"), N("r")),
            "ellipse" => Ellipse(N("cx"), N("cy"), N("rx"), N("ry")),
            "rect" => Rectangle(e, N("x"), N("y"), N("width"), N("height")),
            "line" => [new([SvgCurve.Line(new(N("x1"), N("y1")), new(N("x2"), N("y2")))], false)],
            "polyline" => Polygon(e, false),
            _ => Polygon(e, true),
        };
    }

    private static IEnumerable<SvgOutline> Ellipse(float cx, float cy, float rx, float ry) =>
        rx <= 0 || ry <= 0
            ? []
            : new SvgPathData(
                FormattableString.Invariant($"M{cx - rx} {cy}a{rx} {ry} 0 1 0 {2 * rx} 0a{rx} {ry} 0 1 0 {-2 * rx} 0z")
            ).Outlines();

    private static IEnumerable<SvgOutline> Rectangle(XElement e, float x, float y, float width, float height)
    {
        if (width <= 0 || height <= 0)
            return [];
        var given = (X: SvgNumbers.Length(e, "rx", -1), Y: SvgNumbers.Length(e, "ry", -1));
        var rx = (float)Math.Min(Math.Max(0, given.X >= 0 ? given.X : given.Y), width / 2);
        var ry = (float)Math.Min(Math.Max(0, given.Y >= 0 ? given.Y : given.X), height / 2);
        var (w, h) = (width - 2 * rx, height - 2 * ry);
        var data =
            rx <= 0 || ry <= 0
                ? FormattableString.Invariant($"M{x} {y}h{width}v{height}h{-width}z")
                : FormattableString.Invariant($"M{x + rx} {y}h{w}a{rx} {ry} 0 0 1 {rx} {ry}v{h}a{rx} {ry} 0 0 1 {-rx} {ry}")
                    + FormattableString.Invariant($"h{-w}a{rx} {ry} 0 0 1 {-rx} {-ry}v{-h}a{rx} {ry} 0 0 1 {rx} {-ry}z");
        return new SvgPathData(data).Outlines();
    }

    private static IEnumerable<SvgOutline> Polygon(XElement e, bool closed)
    {
        var n = SvgNumbers.All(e.Attribute("points")?.Value ?? "", "points");
        var points = n.Chunk(2).Where(p => p.Length == 2).Select(p => new Vector2((float)p[0], (float)p[1])).ToList();
        return [new([.. points.Zip(points.Skip(1), SvgCurve.Line)], closed)];
    }
}
