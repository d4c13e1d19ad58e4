namespace Traceability.Documents.Drawing;

/// <summary>
/// A piece of a document as high as it is and never cut: a line of a paragraph, a row, a picture. A document is a list of them;
/// where pages end is decided before anything is drawn.
/// </summary>
/// <param name="Height">Height in points.</param>
/// <param name="Draw">Draws the strip with its top at the given height of the page.</param>
internal sealed record Strip(double Height, Action<PageCanvas, double> Draw)
{
    /// <summary>Must not be the last on its page.</summary>
    public bool KeepWithNext { get; init; }

    /// <summary>White space that falls away at the top of a page.</summary>
    public bool IsSpace { get; init; }

    /// <summary>Repeated above this strip when it begins a page.</summary>
    public Strip? Heading { get; init; }

    public static Strip Space(double height) => new(height, (_, _) => { }) { IsSpace = true };
}
