using System.Globalization;
using PdfSharp.Drawing;

namespace Traceability.Documents.Logos;

/// <summary>Colours as SVG writes them (CSS Color 3): #rgb, #rrggbb, rgb(), the names; none is no colour.</summary>
internal static class SvgColour
{
    public static XColor? Of(string text) =>
        text switch
        {
            "none" or "transparent" => null,
            "currentColor" or "currentcolor" => XColors.Black,
            ['#', var r, var g, var b] => Hex($"{r}{r}{g}{g}{b}{b}"),
            ['#', .. { Length: 6 } six] => Hex(six),
            _ when text.StartsWith("rgb(", StringComparison.Ordinal) && text.EndsWith(')') => Rgb(text[4..^1]),
            _ when System.Drawing.Color.FromName(text) is { IsKnownColor: true, IsSystemColor: false } named => XColor.FromArgb(
                named.R,
                named.G,
                named.B
            ),
            _ => throw new LogoException(LogoFault.NotDrawn, text),
        };

    /// A number from 0 to 1, or percent.
    public static double Share(string text, string where) =>
        Math.Clamp(text.EndsWith('%') ? SvgNumbers.Parse(text[..^1], where) / 100 : SvgNumbers.Parse(text, where), 0, 1);

    private static XColor Hex(string six) =>
        int.TryParse(six, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value)
            ? XColor.FromArgb(value >> 16 & 255, value >> 8 & 255, value & 255)
            : throw new LogoException(LogoFault.NotDrawn, "#" + six);

    private static XColor Rgb(string inside)
    {
        var parts = inside.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length != 3)
            throw new LogoException(LogoFault.NotDrawn, $"rgb({inside})");
        var levels = parts.Select(p => p.EndsWith('%') ? 255 * Share(p, "rgb") : SvgNumbers.Parse(p, "rgb")).ToArray();
        return XColor.FromArgb(Level(levels[0]), Level(levels[1]), Level(levels[2]));
    }

    private static int Level(double value) => (int)Math.Round(Math.Clamp(value, 0, 255));
}
