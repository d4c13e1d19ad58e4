using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;
using Traceability.Documents.Codes;
using Traceability.Documents.Drawing;
using Traceability.Documents.Fonts;

namespace Traceability.Documents.Labels;

/// <summary>
/// The sheet that hangs at a bench: one code for each action, so that a stage can be recorded with the scanner alone. Codes stand well
/// apart, for a scanner takes whatever is in its light.
/// </summary>
public static class ActionSheet
{
    private const double Margin = 42,
        Head = 84,
        Foot = 44,
        Code = 96;

    private const int Columns = 3,
        Rows = 4;

    private static readonly TextStyle Title = new(InterFonts.Light, 24, Ink.Black, 1.15);
    private static readonly TextStyle Word = new(InterFonts.SemiBold, 15, Ink.Black);
    private static readonly TextStyle Meaning = new(InterFonts.Regular, 8.5, Ink.Soft);
    private static readonly TextStyle Letters = new(InterFonts.Medium, 9, Ink.Black);

    /// <summary>Renders the sheet, twelve actions to a page.</summary>
    /// <param name="title">Its title, such as "Action sheet".</param>
    /// <param name="subtitle">Where it belongs or how to use it.</param>
    /// <param name="actions">The actions in the order of their use.</param>
    /// <exception cref="ArgumentException">A code is empty or too long for a QR code.</exception>
    public static byte[] Render(string title, string subtitle, IReadOnlyList<LabelText> actions)
    {
        using var pdf = new PdfFile(title, "en");
        AddPages(pdf, title, subtitle, actions);
        return pdf.ToBytes();
    }

    /// <summary>Adds the sheet to a file that may hold more.</summary>
    internal static void AddPages(PdfFile pdf, string title, string subtitle, IReadOnlyList<LabelText> actions)
    {
        var pages = actions.Chunk(Columns * Rows).DefaultIfEmpty([]).ToArray();
        for (var page = 0; page < pages.Length; page++)
        {
            var number = page;
            pdf.AddPage(canvas =>
            {
                DrawHead(canvas, title, subtitle);
                for (var i = 0; i < pages[number].Length; i++)
                    DrawAction(canvas, pages[number][i], Cell(i));
                canvas.Artifact(() =>
                    canvas.TextRight(
                        $"page {number + 1} of {pages.Length}",
                        TextStyle.Footer,
                        PdfFile.PageWidth - Margin,
                        PdfFile.PageHeight - 36
                    )
                );
            });
        }
    }

    private static XRect Cell(int index)
    {
        var (width, height) = ((PdfFile.PageWidth - 2 * Margin) / Columns, (PdfFile.PageHeight - Head - Foot) / Rows);
        return new XRect(Margin + index % Columns * width, Head + index / Columns * height, width, height);
    }

    private static void DrawHead(PageCanvas canvas, string title, string subtitle)
    {
        const double room = PdfFile.PageWidth - 2 * Margin - 70;
        var (heading, style) = Title.Fitted(title, room);
        canvas.Block(PdfBlockLevelElementTag.Heading1, () => canvas.Text(heading, style, Margin, 28));
        var (line, small) = Meaning.Fitted(subtitle, room);
        canvas.Block(PdfBlockLevelElementTag.Paragraph, () => canvas.Text(line, small, Margin, 58));
        canvas.Artifact(() => RingMotif.Draw(canvas.Graphics, new XPoint(PdfFile.PageWidth - Margin - 26, 46), 26));
        canvas.Rule(Margin, Head - 4, PdfFile.PageWidth - 2 * Margin, Ink.BrassLight, 0.6);
    }

    private static void DrawAction(PageCanvas canvas, LabelText action, XRect cell)
    {
        var room = cell.Width - 12;
        var centre = cell.X + cell.Width / 2;
        var top = cell.Y + 10;
        var word = Word.ShrunkTo(action.Title, room);
        canvas.Block(PdfBlockLevelElementTag.Heading2, () => canvas.TextCentred(action.Title, word, centre, top));

        var square = new XRect(centre - Code / 2, top + Word.LineHeight + 2, Code, Code);
        var code = CodeMatrix.Qr(action.Code);
        canvas.Figure($"Code {action.Code}", square, () => code.Draw(canvas.Graphics, square));

        var letters = Letters.ShrunkTo(action.Code, room);
        canvas.Block(PdfBlockLevelElementTag.Paragraph, () => canvas.TextCentred(action.Code, letters, centre, square.Bottom + 1));
        var meaning = LineBreaker.Break(action.Detail, Meaning, room, most: 2);
        canvas.Block(
            PdfBlockLevelElementTag.Paragraph,
            () =>
            {
                for (var i = 0; i < meaning.Count; i++)
                    canvas.TextCentred(meaning[i], Meaning, centre, square.Bottom + 4 + Letters.LineHeight + i * Meaning.LineHeight);
            }
        );
        canvas.Rule(cell.X, cell.Bottom - 4, cell.Width, Ink.Hairline, 0.5);
    }
}
