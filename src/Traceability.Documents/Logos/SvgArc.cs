using System.Numerics;

namespace Traceability.Documents.Logos;

/// <summary>An elliptical arc as cubic curves (SVG 1.1, F.6.5 and F.6.6), a quarter turn each at most.</summary>
internal static class SvgArc
{
    public static IEnumerable<SvgCurve> Curves(Vector2 from, Vector2 to, float rx, float ry, float turnDegrees, bool large, bool sweep)
    {
        if (from == to)
            return [];
        if (rx == 0 || ry == 0)
            return [SvgCurve.Line(from, to)];

        var (a, b) = (Math.Abs((double)rx), Math.Abs((double)ry));
        var turn = turnDegrees * Math.PI / 180;
        var (cos, sin) = (Math.Cos(turn), Math.Sin(turn));
        var half = (from - to) / 2;
        var (x, y) = (cos * half.X + sin * half.Y, -sin * half.X + cos * half.Y);
        var stretch = x * x / (a * a) + y * y / (b * b);
        if (stretch > 1)
            (a, b) = (a * Math.Sqrt(stretch), b * Math.Sqrt(stretch));

        var rest = a * a * b * b - a * a * y * y - b * b * x * x;
        var root = Math.Sqrt(Math.Max(0, rest) / (a * a * y * y + b * b * x * x)) * (large == sweep ? -1 : 1);
        var (cx, cy) = (root * a * y / b, -root * b * x / a);
        var first = Math.Atan2((y - cy) / b, (x - cx) / a);
        var swept = Math.Atan2((-y - cy) / b, (-x - cx) / a) - first;
        if (sweep && swept < 0)
            swept += 2 * Math.PI;
        else if (!sweep && swept > 0)
            swept -= 2 * Math.PI;

        var middle = (from + to) / 2;
        var centre = new Vector2((float)(cos * cx - sin * cy + middle.X), (float)(sin * cx + cos * cy + middle.Y));
        var pieces = Math.Max(1, (int)Math.Ceiling(Math.Abs(swept) / (Math.PI / 2) - 1e-6));
        return Enumerable.Range(0, pieces).Select(i => Piece(first + swept * i / pieces, swept / pieces));

        SvgCurve Piece(double angle, double by)
        {
            var reach = 4 / 3.0 * Math.Tan(by / 4);
            var end = angle + by;
            return new(
                On(Math.Cos(angle), Math.Sin(angle)),
                On(Math.Cos(angle) - reach * Math.Sin(angle), Math.Sin(angle) + reach * Math.Cos(angle)),
                On(Math.Cos(end) + reach * Math.Sin(end), Math.Sin(end) - reach * Math.Cos(end)),
                On(Math.Cos(end), Math.Sin(end))
            );
        }

        Vector2 On(double u, double v) => centre + new Vector2((float)(cos * a * u - sin * b * v), (float)(sin * a * u + cos * b * v));
    }
}
