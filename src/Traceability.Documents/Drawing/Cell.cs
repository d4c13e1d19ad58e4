using PdfSharp.Drawing;

namespace Traceability.Documents.Drawing;

/// <summary>A column of a table; its share is a part of the table's width.</summary>
internal sealed record Column(string Title, double Share, bool Right = false);

/// <summary>A cell: its text, and under it a smaller note.</summary>
internal sealed record Cell(string? Text, TextStyle? Look = null, string? Note = null, double Indent = 0)
{
    public TextStyle Style => Look ?? TextStyle.Body;

    /// A small drawing in the first line of an otherwise empty cell, given the room it has; the words beside it say the same.
    public Action<XGraphics, XRect>? Mark { get; init; }

    public static implicit operator Cell(string? text) => new(text);

    /// Every line with its own style, wrapped to the width of the column.
    public IReadOnlyList<(string Line, TextStyle Style)> Wrap(double width)
    {
        var text = LineBreaker.Break(Text, Style, width - Indent).Select(line => (line, Style));
        return string.IsNullOrEmpty(Note)
            ? [.. text]
            : [.. text, .. LineBreaker.Break(Note, TextStyle.Note, width - Indent).Select(line => (line, TextStyle.Note))];
    }
}
