using System.Collections.Concurrent;
using System.Globalization;
using PdfSharp.Drawing;
using Traceability.Documents.Fonts;

namespace Traceability.Documents.Drawing;

/// <summary>
/// Widths of text in the real font. PDFsharp sets glyph beside glyph without kerning, so that a width is the sum of advances;
/// each is asked for once and kept, and layout needs no open page.
/// </summary>
internal static class TextRuler
{
    /// Ascent and descent of Inter in parts of the size, from its own header.
    public const double Ascent = 0.969,
        Descent = 0.242,
        CapHeight = 0.727;

    private const double Unit = 1000;

    private static readonly ConcurrentDictionary<(string Face, int CodePoint), double> Advances = new();

    private static readonly Lock Measuring = new();

    public static double Width(string face, double size, ReadOnlySpan<char> text)
    {
        var sum = 0.0;
        foreach (var rune in text.EnumerateRunes())
            sum += Advances.GetOrAdd((face, rune.Value), Measure);
        return sum * size / Unit;
    }

    /// Distance from the alignment line down to the baseline.
    public static double Baseline(double size, XLineAlignment alignment) =>
        alignment switch
        {
            XLineAlignment.Near => Ascent * size,
            XLineAlignment.Center => CapHeight * size / 2,
            _ => -Descent * size,
        };

    private static double Measure((string Face, int CodePoint) glyph)
    {
        if (CharUnicodeInfo.GetUnicodeCategory(glyph.CodePoint) is UnicodeCategory.NonSpacingMark or UnicodeCategory.Format)
            return 0;

        InterFontResolver.EnsureInstalled();
        lock (Measuring)
        {
            using var context = XGraphics.CreateMeasureContext(new XSize(Unit, Unit), XGraphicsUnit.Point, XPageDirection.Downwards);
            return context.MeasureString(char.ConvertFromUtf32(glyph.CodePoint), new XFont(glyph.Face, Unit)).Width;
        }
    }
}
