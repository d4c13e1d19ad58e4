using PdfSharp.Drawing;
using Traceability.Documents.Drawing;

namespace Traceability.Documents.Certificates;

/// <summary>The A4 page of a certificate, in points.</summary>
internal static class Sheet
{
    public const double Width = PdfFile.PageWidth,
        Height = PdfFile.PageHeight,
        Margin = 48;

    public const double Inner = Width - 2 * Margin,
        Right = Width - Margin;

    public const double Bottom = Height - 60;

    /// The first page begins with the masthead, the others leave room for a running head.
    public static double Top(int page) => page == 0 ? 40 : 66;

    public static XPoint MotifCentre { get; } = new(Width - 76, 54);

    public const double MotifRadius = 98;
}
