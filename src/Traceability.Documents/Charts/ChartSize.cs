namespace Traceability.Documents.Charts;

/// <summary>Size of a chart on a page, in CSS pixels; it scales with its element, so choose a narrow one for a narrow column.</summary>
public readonly record struct ChartSize(double Width, double Height)
{
    public static ChartSize Wide { get; } = new(880, 340);

    public static ChartSize Narrow { get; } = new(420, 300);

    /// <summary>Text on a page is read from an arm's length, on paper from nearer.</summary>
    internal const double PageScale = 13 / ChartFrame.TextSize;
}
