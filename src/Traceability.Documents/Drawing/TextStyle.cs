using PdfSharp.Drawing;
using Traceability.Documents.Fonts;

namespace Traceability.Documents.Drawing;

/// <summary>How a piece of text looks; sizes in points.</summary>
internal sealed record TextStyle(string Face, double Size, XColor Colour, double Leading = 1.32)
{
    public static readonly TextStyle Body = new(InterFonts.Regular, 8, Ink.Black);
    public static readonly TextStyle Strong = new(InterFonts.SemiBold, 8, Ink.Black);
    public static readonly TextStyle Note = new(InterFonts.Regular, 7, Ink.Soft);
    public static readonly TextStyle Label = new(InterFonts.Medium, 6.5, Ink.Soft);
    public static readonly TextStyle Heading = new(InterFonts.SemiBold, 11, Ink.Brass);
    public static readonly TextStyle SubHeading = new(InterFonts.SemiBold, 8, Ink.Black);
    public static readonly TextStyle Footer = new(InterFonts.Regular, 6.5, Ink.Soft);
    public static readonly TextStyle Alert = new(InterFonts.SemiBold, 8, Ink.Alert);

    public double LineHeight => Size * Leading;

    /// From the top of a line to its baseline: the leading is shared out above and below the letters.
    public double BaselineOffset => (LineHeight - (TextRuler.Ascent + TextRuler.Descent) * Size) / 2 + TextRuler.Ascent * Size;

    public double WidthOf(ReadOnlySpan<char> text) => TextRuler.Width(Face, Size, text);

    /// The same look, small enough for the text to fit into the width on one line.
    public TextStyle ShrunkTo(string text, double width, double leastShare = 0)
    {
        var natural = WidthOf(text);
        return natural <= width ? this : this with { Size = Size * Math.Max(leastShare, width / natural) };
    }

    /// One line: smaller when need be, but still to be read; what is then too long ends in an ellipsis. For text that stands elsewhere in
    /// full.
    public (string Text, TextStyle Style) Fitted(string text, double width)
    {
        var line = LineBreaker.Printable(text);
        var style = ShrunkTo(line, width, 0.8);
        return (style.CutTo(line, width), style);
    }

    /// The text if it fits, else as much of it as does, with an ellipsis.
    public string CutTo(string line, double width)
    {
        while (line is not "…" && WidthOf(line) > width)
            line = Shorter(line.TrimEnd('…', ' ')) + "…";
        return line;
    }

    private static string Shorter(string line) => line.Length < 2 ? "" : line[..^(char.IsLowSurrogate(line[^1]) ? 2 : 1)];
}
