using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;
using Traceability.Documents.Codes;
using Traceability.Documents.Drawing;
using Traceability.Documents.Fonts;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>
/// The head of the first page: which unit this is, the film it was born from, and the code that lets anyone ask whether this is genuine.
/// </summary>
internal static class Masthead
{
    private const double TitleWidth = 350,
        CodeEdge = 92,
        CodeColumn = 112,
        ColumnGap = 18;

    private static readonly TextStyle WorkshopName = new(InterFonts.SemiBold, 10, Ink.Black);
    private static readonly TextStyle Kicker = new(InterFonts.SemiBold, 9, Ink.Brass);
    private static readonly TextStyle Model = new(InterFonts.Light, 30, Ink.Black, 1.15);
    private static readonly TextStyle Serial = new(InterFonts.SemiBold, 14, Ink.Black);
    private static readonly TextStyle Kind = new(InterFonts.Regular, 9.5, Ink.Soft);
    private static readonly TextStyle FilmLot = new(InterFonts.SemiBold, 12, Ink.Black);
    private static readonly TextStyle Fact = new(InterFonts.Medium, 8.5, Ink.Black);

    public static IEnumerable<Strip> Strips(CertificateDocument certificate, Logo? logo) =>
        [
            .. Workshop(certificate, logo),
            .. Title(certificate),
            .. certificate.InventedDataNotice is { Length: > 0 } notice ? Notice(notice) : [],
            .. certificate.FilmLots().SelectMany(Film),
            Strip.Space(10),
            .. Facts(certificate),
        ];

    /// The workshop speaks: its logo, its name, where it is and how it is reached.
    private static IEnumerable<Strip> Workshop(CertificateDocument certificate, Logo? logo)
    {
        if (logo is not null)
        {
            yield return logo.Strip(certificate.WorkshopName);
            yield return Strip.Space(6);
        }

        yield return Line(certificate.WorkshopName, WorkshopName, PdfBlockLevelElementTag.Paragraph);
        var lines = string.Join('\n', new[] { certificate.WorkshopAddress, certificate.WorkshopContact }.OfType<string>());
        if (lines.Length > 0)
            yield return Line(lines, TextStyle.Note, PdfBlockLevelElementTag.Paragraph);
        yield return Strip.Space(16);
    }

    private static IEnumerable<Strip> Title(CertificateDocument certificate) =>
        [
            Line("Birth certificate", Kicker, PdfBlockLevelElementTag.Heading1),
            Line(certificate.Identity.Model, Model, PdfBlockLevelElementTag.Paragraph),
            Line(certificate.Identity.Kind, Kind, PdfBlockLevelElementTag.Paragraph),
            Strip.Space(7),
            Line(certificate.Serial, Serial, PdfBlockLevelElementTag.Paragraph),
            Strip.Space(14),
        ];

    private static Strip Line(string text, TextStyle style, PdfBlockLevelElementTag tag)
    {
        var lines = LineBreaker.Break(text, style, TitleWidth);
        return new Strip(
            lines.Count * style.LineHeight,
            (canvas, top) => canvas.Block(tag, () => canvas.Lines(lines, style, Sheet.Margin, top))
        );
    }

    internal static IEnumerable<Strip> Notice(string notice)
    {
        var lines = LineBreaker.Break(notice, TextStyle.Alert, Sheet.Inner - 16);
        var height = lines.Count * TextStyle.Alert.LineHeight + 8;
        yield return new Strip(
            height,
            (canvas, top) =>
            {
                canvas.Artifact(() =>
                    canvas.Graphics.DrawRectangle(Ink.Pen(Ink.Alert, 0.8), Ink.Brush(Ink.Paper), Sheet.Margin, top, Sheet.Inner, height)
                );
                canvas.Block(PdfBlockLevelElementTag.Paragraph, () => canvas.Lines(lines, TextStyle.Alert, Sheet.Margin + 8, top + 4));
            }
        );
        yield return Strip.Space(8);
    }

    /// The lot stands large at the left, what is known about it beside it.
    private static IEnumerable<Strip> Film(FilmData film)
    {
        const double lotWidth = 170,
            dataLeft = Sheet.Margin + 12 + lotWidth + 14;
        var lot = LineBreaker.Break(film.LotNumber, FilmLot, lotWidth);
        var data = LineBreaker.Break(CertificateWords.Film(film), Fact, Sheet.Right - dataLeft - 10);
        var supplied = LineBreaker.Break(
            CertificateWords.Supplied(film.Supplier, film.SupplierLot),
            TextStyle.Note,
            Sheet.Right - dataLeft - 10
        );
        var height =
            Math.Max(
                TextStyle.Label.LineHeight + lot.Count * FilmLot.LineHeight,
                data.Count * Fact.LineHeight + supplied.Count * TextStyle.Note.LineHeight
            ) + 13;
        yield return new Strip(
            height,
            (canvas, top) =>
            {
                canvas.Artifact(() =>
                {
                    canvas.Graphics.DrawRectangle(Ink.Brush(Ink.BrassPale), Sheet.Margin, top, Sheet.Inner, height);
                    canvas.Graphics.DrawRectangle(Ink.Brush(Ink.BrassLight), Sheet.Margin, top, 2.5, height);
                });
                canvas.Block(
                    PdfBlockLevelElementTag.Paragraph,
                    () =>
                    {
                        var title = film.LotNumber.Length == 0 ? "Born from this film" : "Born from film lot";
                        canvas.Text(title, TextStyle.Label, Sheet.Margin + 12, top + 6);
                        canvas.Lines(lot, FilmLot, Sheet.Margin + 12, top + 6 + TextStyle.Label.LineHeight);
                        canvas.Lines(data, Fact, dataLeft, top + 7);
                        canvas.Lines(supplied, TextStyle.Note, dataLeft, top + 7 + data.Count * Fact.LineHeight);
                    }
                );
            }
        );
        yield return Strip.Space(2);
    }

    private static List<Strip> Facts(CertificateDocument certificate)
    {
        const double column = (Sheet.Inner - CodeColumn - 2 * ColumnGap) / 2;
        var strips = IdentityFacts.Of(certificate).Chunk(2).Select(pair => FactRow(pair, column)).ToList();
        var address = LineBreaker.Break(certificate.VerifyAddress, TextStyle.Footer, CodeColumn);
        var missing = CodeEdge + 26 + address.Count * TextStyle.Footer.LineHeight - strips.Sum(strip => strip.Height);
        strips[0] = strips[0] with { Draw = strips[0].Draw + ((canvas, top) => Code(canvas, certificate, address, top)) };
        if (missing > 0)
            strips.Add(Strip.Space(missing));
        return strips;
    }

    private static Strip FactRow((string Label, string Text)[] pair, double column)
    {
        var texts = pair.Select(fact => LineBreaker.Break(fact.Text, Fact, column)).ToArray();
        return new Strip(
            TextStyle.Label.LineHeight + texts.Max(lines => lines.Count) * Fact.LineHeight + 6,
            (canvas, top) =>
            {
                for (var i = 0; i < pair.Length; i++)
                {
                    var x = Sheet.Margin + i * (column + ColumnGap);
                    canvas.Block(
                        PdfBlockLevelElementTag.Paragraph,
                        () =>
                        {
                            canvas.Text(pair[i].Label, TextStyle.Label, x, top);
                            canvas.Lines(texts[i], Fact, x, top + TextStyle.Label.LineHeight);
                        }
                    );
                }
            }
        );
    }

    private static void Code(PageCanvas canvas, CertificateDocument certificate, IReadOnlyList<string> address, double top)
    {
        var left = Sheet.Right - CodeColumn;
        var code = CodeMatrix.Qr(certificate.VerifyAddress);
        var quiet = CodeEdge * code.QuietZone / code.Size;
        var square = new XRect(left - quiet, top - quiet, CodeEdge + 2 * quiet, CodeEdge + 2 * quiet);
        canvas.Figure($"QR code of {certificate.VerifyAddress}", square, () => code.Draw(canvas.Graphics, square));
        canvas.Block(
            PdfBlockLevelElementTag.Paragraph,
            () =>
            {
                canvas.Text("Genuine and current? Ask here:", TextStyle.Label with { Colour = Ink.Brass }, left, top + CodeEdge + 8);
                canvas.Lines(address, TextStyle.Footer, left, top + CodeEdge + 18);
            }
        );
    }
}
