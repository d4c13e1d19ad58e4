using System.Numerics;
using System.Text.RegularExpressions;

namespace Traceability.Documents.Logos;

/// <summary>The transform attribute (SVG 1.1, 7.6): a list, of which the last is applied first.</summary>
internal static partial class SvgTransform
{
    public static Matrix3x2 Of(string? text)
    {
        var whole = Matrix3x2.Identity;
        if (string.IsNullOrWhiteSpace(text))
            return whole;
        if (Part().Replace(text, "").Trim(' ', ',', '\t', '\r', '\n').Length > 0)
            throw new LogoException(LogoFault.NotAPicture, "transform");
        foreach (Match part in Part().Matches(text))
            whole = One(part.Groups["name"].Value, SvgNumbers.All(part.Groups["numbers"].Value, "transform")) * whole;
        return whole;
    }

    private static Matrix3x2 One(string name, IReadOnlyList<double> n) =>
        (name, n.Count) switch
        {
            ("matrix", 6) => new((float)n[0], (float)n[1], (float)n[2], (float)n[3], (float)n[4], (float)n[5]),
            ("translate", 1) => Matrix3x2.CreateTranslation((float)n[0], 0),
            ("translate", 2) => Matrix3x2.CreateTranslation((float)n[0], (float)n[1]),
            ("scale", 1) => Matrix3x2.CreateScale((float)n[0]),
            ("scale", 2) => Matrix3x2.CreateScale((float)n[0], (float)n[1]),
            ("rotate", 1) => Matrix3x2.CreateRotation(Radians(n[0])),
            ("rotate", 3) => Matrix3x2.CreateRotation(Radians(n[0]), new((float)n[1], (float)n[2])),
            ("skewX", 1) => Matrix3x2.CreateSkew(Radians(n[0]), 0),
            ("skewY", 1) => Matrix3x2.CreateSkew(0, Radians(n[0])),
            _ => throw new LogoException(LogoFault.NotAPicture, "transform"),
        };

    private static float Radians(double degrees) => (float)(degrees * Math.PI / 180);

    [GeneratedRegex(@"(?<name>[a-zA-Z]+)\s*\((?<numbers>[^)]*)\)\s*,?")]
    private static partial Regex Part();
}
