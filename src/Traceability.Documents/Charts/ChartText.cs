using OxyPlot;
using PdfSharp.Drawing;
using Traceability.Documents.Drawing;
using Traceability.Documents.Fonts;
using HorizontalAlignment = OxyPlot.HorizontalAlignment;
using VerticalAlignment = OxyPlot.VerticalAlignment;

namespace Traceability.Documents.Charts;

/// <summary>Size and place of chart text, the same for paper and page, so that nothing is clipped on either.</summary>
internal static class ChartText
{
    public static string Face(double weight) => weight > 500 ? InterFonts.SemiBold : InterFonts.Regular;

    public static OxySize Size(string? text, double size, double weight) =>
        string.IsNullOrEmpty(text)
            ? OxySize.Empty
            : new OxySize(TextRuler.Width(Face(weight), size, text), size * (TextRuler.Ascent + TextRuler.Descent));

    public static double Left(string text, double size, double weight, HorizontalAlignment alignment) =>
        -Size(text, size, weight).Width
        * alignment switch
        {
            HorizontalAlignment.Left => 0,
            HorizontalAlignment.Center => 0.5,
            _ => 1,
        };

    public static double Baseline(double size, VerticalAlignment alignment) =>
        TextRuler.Baseline(
            size,
            alignment switch
            {
                VerticalAlignment.Top => XLineAlignment.Near,
                VerticalAlignment.Middle => XLineAlignment.Center,
                _ => XLineAlignment.Far,
            }
        );
}
