using System.Globalization;
using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Legends;
using PdfSharp.Drawing;
using Traceability.Documents.Fonts;

namespace Traceability.Documents.Charts;

/// <summary>What all charts share: the bare model, the look of an axis, and the two ways out, to paper and to a page.</summary>
internal static class ChartFrame
{
    public const double TextSize = 7.5;

    public static PlotModel Model(double scale) =>
        new()
        {
            DefaultFontSize = TextSize * scale,
            TextColor = ChartInk.Text.Colour,
            PlotAreaBorderColor = ChartInk.Frame.Colour,
            PlotAreaBorderThickness = new OxyThickness(0.6 * scale),
            Padding = new OxyThickness(2 * scale, 2 * scale, 2 * scale, 1 * scale),
            IsLegendVisible = false,
        };

    public static TAxis Style<TAxis>(TAxis axis, AxisPosition position, string title, double scale)
        where TAxis : Axis
    {
        axis.Position = position;
        axis.Title = title;
        axis.FontSize = axis.TitleFontSize = TextSize * scale;
        axis.AxisTitleDistance = 3 * scale;
        axis.AxisTickToLabelDistance = 2 * scale;
        axis.MajorTickSize = 3 * scale;
        axis.MinorTickSize = 0;
        axis.TicklineColor = axis.AxislineColor = ChartInk.Frame.Colour;
        axis.TextColor = axis.TitleColor = ChartInk.Text.Colour;
        axis.MajorGridlineStyle = axis.MinorGridlineStyle = LineStyle.Solid;
        axis.MajorGridlineColor = axis.MinorGridlineColor = ChartInk.Grid.Colour;
        axis.MajorGridlineThickness = 0.6 * scale;
        axis.MinorGridlineThickness = 0.3 * scale;
        return axis;
    }

    /// A number of an axis that may lie below zero, with a true minus sign.
    public static string Signed(double value) => value.ToString("0.###", CultureInfo.InvariantCulture).Replace('-', '\u2212');

    public static void AddLegend(PlotModel model, double scale)
    {
        model.IsLegendVisible = true;
        model.Legends.Add(
            new Legend
            {
                LegendPlacement = LegendPlacement.Outside,
                LegendPosition = LegendPosition.TopLeft,
                LegendOrientation = LegendOrientation.Horizontal,
                LegendFontSize = TextSize * scale,
                LegendTextColor = ChartInk.Text.Colour,
                LegendSymbolLength = 22 * scale,
                LegendSymbolMargin = 3 * scale,
                LegendItemSpacing = 14 * scale,
                LegendPadding = 0,
                LegendMargin = 2 * scale,
                LegendBorderThickness = 0,
            }
        );
    }

    public static void Draw(PlotModel model, XGraphics graphics, XRect rect)
    {
        InterFontResolver.EnsureInstalled();
        var before = graphics.Save();
        graphics.TranslateTransform(rect.X, rect.Y);
        Render(model, new PdfCanvas(graphics), rect.Width, rect.Height);
        graphics.Restore(before);
    }

    public static string ToSvg(PlotModel model, ChartSize size, string title, string description)
    {
        var canvas = new SvgCanvas(size.Width, size.Height, title, description);
        Render(model, canvas, size.Width, size.Height);
        return canvas.ToString();
    }

    private static void Render(PlotModel model, IRenderContext context, double width, double height)
    {
        ((IPlotModel)model).Update(updateData: true);
        ((IPlotModel)model).Render(context, new OxyRect(0, 0, width, height));
    }
}
