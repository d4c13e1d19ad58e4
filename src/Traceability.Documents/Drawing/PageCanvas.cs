using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Traceability.Documents.Drawing;

/// <summary>One page being drawn: text on baselines, rules, and the structure that a screen reader follows.</summary>
internal sealed class PageCanvas(XGraphics graphics, StructureBuilder structure)
{
    /// Inside an artifact nothing has a place in the structure.
    private int _artifacts;

    public XGraphics Graphics => graphics;

    public void Text(string text, TextStyle style, double x, double top)
    {
        if (text.Length > 0)
            graphics.DrawString(text, new XFont(style.Face, style.Size), Ink.Brush(style.Colour), x, top + style.BaselineOffset);
    }

    public void TextRight(string text, TextStyle style, double right, double top) => Text(text, style, right - style.WidthOf(text), top);

    public void TextCentred(string text, TextStyle style, double centre, double top) =>
        Text(text, style, centre - style.WidthOf(text) / 2, top);

    public void Lines(IReadOnlyList<string> lines, TextStyle style, double x, double top)
    {
        for (var i = 0; i < lines.Count; i++)
            Text(lines[i], style, x, top + i * style.LineHeight);
    }

    public void Rule(double x, double y, double width, XColor colour, double weight = 0.5) =>
        Artifact(() => graphics.DrawLine(Ink.Pen(colour, weight), x, y, x + width, y));

    /// Drawn for the eye only: rules, page furniture, headings that come again.
    public void Artifact(Action draw)
    {
        if (_artifacts++ == 0)
            structure.BeginArtifact();
        draw();
        if (--_artifacts == 0)
            structure.End();
    }

    public void Block(PdfBlockLevelElementTag tag, Action draw)
    {
        Open(tag);
        draw();
        Close();
    }

    public void Figure(string description, XRect rect, Action draw)
    {
        structure.BeginElement(PdfIllustrationElementTag.Figure, description, rect);
        draw();
        structure.End();
    }

    public void Open(PdfBlockLevelElementTag tag)
    {
        if (_artifacts == 0)
            structure.BeginElement(tag);
    }

    public void Close()
    {
        if (_artifacts == 0)
            structure.End();
    }
}
