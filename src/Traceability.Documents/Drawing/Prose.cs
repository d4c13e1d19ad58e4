using PdfSharp.UniversalAccessibility;

namespace Traceability.Documents.Drawing;

/// <summary>Headings and paragraphs as strips.</summary>
internal static class Prose
{
    private const int MostLines = 24;

    public static IEnumerable<Strip> Heading(string text, double left, double width)
    {
        yield return Strip.Space(13);
        var lines = LineBreaker.Break(text, TextStyle.Heading, width);
        yield return Lines(lines, TextStyle.Heading, PdfBlockLevelElementTag.Heading2, left) with
        {
            KeepWithNext = true,
        };
        yield return new Strip(2.5, (_, _) => { }) { KeepWithNext = true };
    }

    public static IEnumerable<Strip> SubHeading(string text, double left, double width)
    {
        yield return Strip.Space(5);
        yield return Lines(
            LineBreaker.Break(text, TextStyle.SubHeading, width),
            TextStyle.SubHeading,
            PdfBlockLevelElementTag.Heading3,
            left
        ) with
        {
            KeepWithNext = true,
        };
    }

    public static IEnumerable<Strip> Paragraph(string? text, TextStyle style, double left, double width) =>
        string.IsNullOrWhiteSpace(text)
            ? []
            : LineBreaker
                .Break(text, style, width)
                .Chunk(MostLines)
                .Select(lines => Lines(lines, style, PdfBlockLevelElementTag.Paragraph, left));

    private static Strip Lines(IReadOnlyList<string> lines, TextStyle style, PdfBlockLevelElementTag tag, double left) =>
        new(lines.Count * style.LineHeight, (canvas, top) => canvas.Block(tag, () => canvas.Lines(lines, style, left, top)));
}
