using System.Numerics;
using PdfSharp.Drawing;

namespace Traceability.Documents.Logos;

/// <summary>One shape in the user units of the whole picture: its outlines, its filling and its stroke.</summary>
internal sealed record SvgShape(IReadOnlyList<SvgOutline> Outlines, SvgStyle Style, double StrokeScale)
{
    public void Draw(XGraphics graphics)
    {
        var path = new XGraphicsPath { FillMode = Style.EvenOdd ? XFillMode.Alternate : XFillMode.Winding };
        foreach (var outline in Outlines)
        {
            path.StartFigure();
            foreach (var curve in outline.Curves)
                path.AddBezier(Of(curve.From), Of(curve.Out), Of(curve.In), Of(curve.To));
            if (outline.Closed)
                path.CloseFigure();
        }

        var pen = Style is { Stroke: { } stroke, StrokeWidth: > 0 }
            ? new XPen(Faded(stroke, Style.StrokeOpacity), Style.StrokeWidth * StrokeScale) { LineCap = Style.Cap, LineJoin = Style.Join }
            : null;
        var brush = Style.Fill is { } fill ? new XSolidBrush(Faded(fill, Style.FillOpacity)) : null;
        if (pen is not null || brush is not null)
            graphics.DrawPath(pen, brush, path);
    }

    private static XPoint Of(Vector2 point) => new(point.X, point.Y);

    private static XColor Faded(XColor colour, double opacity) =>
        opacity >= 1 ? colour : XColor.FromArgb((int)Math.Round(255 * opacity), colour.R, colour.G, colour.B);
}

/// <summary>One line of curves without a gap.</summary>
internal sealed record SvgOutline(IReadOnlyList<SvgCurve> Curves, bool Closed);

/// <summary>A cubic Bézier curve; straight lines are curves too.</summary>
internal readonly record struct SvgCurve(Vector2 From, Vector2 Out, Vector2 In, Vector2 To)
{
    public static SvgCurve Line(Vector2 from, Vector2 to) => new(from, Vector2.Lerp(from, to, 1 / 3f), Vector2.Lerp(from, to, 2 / 3f), to);

    public SvgCurve By(Matrix3x2 m) =>
        new(Vector2.Transform(From, m), Vector2.Transform(Out, m), Vector2.Transform(In, m), Vector2.Transform(To, m));
}
