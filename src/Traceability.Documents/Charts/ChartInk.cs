using OxyPlot;
using PdfSharp.Drawing;
using Traceability.Documents.Drawing;

namespace Traceability.Documents.Charts;

/// <summary>
/// What a stroke or a fill in a chart stands for. On paper each role is an opaque ink; on a page it is a class, with presentation
/// attributes that read on light and dark ground when no style sheet says otherwise.
/// </summary>
internal sealed record ChartInk(OxyColor Colour, string Class, string Paint, double Opacity = 1)
{
    public static readonly ChartInk Text = Of(Ink.Black, "chart-text", "currentColor");
    public static readonly ChartInk Frame = Of(Ink.Soft, "chart-frame", "currentColor", 0.7);
    public static readonly ChartInk Grid = Of(Ink.Hairline, "chart-grid", "currentColor", 0.16);
    public static readonly ChartInk Band = Of(Ink.BrassPale, "chart-band", "#b98a3a", 0.2);
    public static readonly ChartInk BandEdge = Of(Ink.BrassLight, "chart-band-edge", "#b98a3a");

    private static readonly ChartInk[] CurveInks =
    [
        Of(XColor.FromArgb(0x23, 0x1F, 0x1A), "chart-curve-1", "currentColor"),
        Of(Ink.Brass, "chart-curve-2", "#a87428"),
        Of(Ink.Slate, "chart-curve-3", "#5f86a8"),
        Of(Ink.Alert, "chart-curve-4", "#b8604a"),
    ];

    private static readonly LineStyle[] Dashes = [LineStyle.Solid, LineStyle.Dash, LineStyle.DashDot, LineStyle.Dot];

    /// Curves are told apart by dash as well as by colour; sixteen before a look comes again.
    public static readonly (ChartInk Ink, LineStyle Dash)[] Curves =
    [
        .. Enumerable.Range(0, 16).Select(i => (CurveInks[i % 4], Dashes[(i + i / 4) % 4])),
    ];

    private static readonly Dictionary<OxyColor, ChartInk> ByColour = new[] { Text, Frame, Grid, Band, BandEdge }
        .Concat(CurveInks)
        .ToDictionary(ink => ink.Colour);

    public static ChartInk For(OxyColor colour) => ByColour[colour];

    private static ChartInk Of(XColor colour, string role, string paint, double opacity = 1) =>
        new(OxyColor.FromRgb(colour.R, colour.G, colour.B), role, paint, opacity);
}
