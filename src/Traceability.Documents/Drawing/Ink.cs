using PdfSharp.Drawing;

namespace Traceability.Documents.Drawing;

/// <summary>The few colours on paper: warm black ink, brass, and the tints that fine rules and bands need. All opaque.</summary>
internal static class Ink
{
    public static readonly XColor Black = XColor.FromArgb(0x22, 0x1E, 0x19);
    public static readonly XColor Soft = XColor.FromArgb(0x66, 0x5D, 0x52);
    public static readonly XColor Rule = XColor.FromArgb(0xD9, 0xD0, 0xC1);
    public static readonly XColor Hairline = XColor.FromArgb(0xE6, 0xDF, 0xD3);
    public static readonly XColor Brass = XColor.FromArgb(0x8F, 0x64, 0x1C);
    public static readonly XColor BrassLight = XColor.FromArgb(0xC9, 0xA5, 0x5F);
    public static readonly XColor BrassPale = XColor.FromArgb(0xF3, 0xEA, 0xD6);
    public static readonly XColor Slate = XColor.FromArgb(0x3E, 0x5C, 0x76);
    public static readonly XColor Paper = XColor.FromArgb(0xFF, 0xFF, 0xFF);
    public static readonly XColor Alert = XColor.FromArgb(0x8E, 0x2F, 0x1B);

    public static XPen Pen(XColor colour, double width) => new(colour, width);

    public static XBrush Brush(XColor colour) => new XSolidBrush(colour);
}
