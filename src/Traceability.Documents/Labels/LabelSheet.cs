using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;
using Traceability.Documents.Codes;
using Traceability.Documents.Drawing;
using Traceability.Documents.Fonts;

namespace Traceability.Documents.Labels;

/// <summary>
/// Sheets of labels to print and cut: the code for the scanner, the same code in letters below it, title and detail beside it.
/// </summary>
public static class LabelSheet
{
    private const double Margin = 28,
        Padding = 7;

    /// <summary>Renders the labels, row by row, on as many pages as they need; with none, a page that says so.</summary>
    /// <exception cref="ArgumentException">A code is empty or cannot be written in the format's kind of code.</exception>
    public static byte[] Render(string title, IReadOnlyList<LabelText> labels, LabelFormat format)
    {
        using var pdf = new PdfFile(title, "en");
        AddPages(pdf, labels, format);
        if (labels.Count == 0)
            pdf.AddPage(canvas =>
                canvas.Block(PdfBlockLevelElementTag.Paragraph, () => canvas.Text("No labels were chosen.", TextStyle.Body, Margin, Margin))
            );
        return pdf.ToBytes();
    }

    /// <summary>Adds the labels to a file that may hold more; with none, nothing.</summary>
    internal static void AddPages(PdfFile pdf, IReadOnlyList<LabelText> labels, LabelFormat format)
    {
        var (width, height) = ((PdfFile.PageWidth - 2 * Margin) / format.Columns, (PdfFile.PageHeight - 2 * Margin) / format.Rows);
        foreach (var page in labels.Chunk(format.Columns * format.Rows))
        {
            pdf.AddPage(canvas =>
            {
                for (var i = 0; i < page.Length; i++)
                    Draw(
                        canvas,
                        page[i],
                        format,
                        new XRect(Margin + i % format.Columns * width, Margin + i / format.Columns * height, width, height)
                    );
            });
        }
    }

    private static void Draw(PageCanvas canvas, LabelText label, LabelFormat format, XRect cell)
    {
        canvas.Artifact(() => canvas.Graphics.DrawRectangle(Ink.Pen(Ink.Rule, 0.3), cell));
        var inside = new XRect(cell.X + Padding, cell.Y + Padding, cell.Width - 2 * Padding, cell.Height - 2 * Padding);
        var scale = Math.Clamp(cell.Height / 96, 0.85, 2);

        // Never cut, only made smaller: somebody may have to type it.
        var letters = new TextStyle(InterFonts.SemiBold, 9.5 * scale, Ink.Black).ShrunkTo(label.Code, inside.Width);
        var edge = Math.Min(inside.Height - letters.LineHeight, inside.Width * 0.52);
        var code = format.DataMatrix ? CodeMatrix.DataMatrix(label.Code) : CodeMatrix.Qr(label.Code);
        var square = new XRect(inside.X, inside.Y, edge, edge);
        canvas.Figure($"Code {label.Code}", square, () => code.Draw(canvas.Graphics, square));

        canvas.Block(PdfBlockLevelElementTag.Paragraph, () => canvas.Text(label.Code, letters, inside.X, square.Bottom));
        var beside = new XRect(square.Right + 5, inside.Y + 2, inside.Right - square.Right - 5, edge - 2);
        canvas.Block(PdfBlockLevelElementTag.Paragraph, () => Words(canvas, label, scale, beside));
    }

    private static void Words(PageCanvas canvas, LabelText label, double scale, XRect room)
    {
        var title = new TextStyle(InterFonts.SemiBold, 8.5 * scale, Ink.Black);
        var detail = new TextStyle(InterFonts.Regular, 7 * scale, Ink.Soft);
        var name = LineBreaker.Break(label.Title, title, room.Width, (int)(room.Height / title.LineHeight));
        var left = room.Height - name.Count * title.LineHeight;
        var more = LineBreaker.Break(label.Detail, detail, room.Width, (int)(left / detail.LineHeight));
        canvas.Lines(name, title, room.X, room.Y);
        canvas.Lines(more, detail, room.X, room.Y + name.Count * title.LineHeight);
    }
}
