using Traceability.Documents.Drawing;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>Lays a birth certificate out on A4 pages.</summary>
public static class CertificatePdf
{
    /// <summary>
    /// Renders the document as a tagged PDF. The same document gives the same text and pictures, though not the same bytes: PDFsharp
    /// tags its font subsets at random. Letters that Inter lacks (it has Latin, Greek and Cyrillic) appear as empty boxes.
    /// </summary>
    /// <exception cref="ArgumentException">The verify address is empty or too long for a QR code.</exception>
    public static byte[] Render(CertificateDocument certificate)
    {
        var pages = Paginator.Paginate(CertificateBody.Strips(certificate), Sheet.Top, Sheet.Bottom);
        using var pdf = new PdfFile(
            $"Birth certificate {certificate.Serial}, revision {certificate.Revision}", CertificateWords.Language,
            $"{certificate.Identity.Model}, certificate {certificate.CertificateId}", certificate.WorkshopName, certificate.IssuedAt);
        for (var page = 0; page < pages.Count; page++)
        {
            var number = page;
            pdf.AddPage(canvas => Draw(canvas, certificate, pages[number], number, pages.Count));
        }
        return pdf.ToBytes();
    }

    private static void Draw(PageCanvas canvas, CertificateDocument certificate, IReadOnlyList<PlacedStrip> strips, int page, int pages)
    {
        canvas.Artifact(() => PageFurniture.Draw(canvas, certificate, page, pages));
        foreach (var (strip, top, repeated) in strips)
        {
            if (repeated)
                canvas.Artifact(() => strip.Draw(canvas, top));
            else
                strip.Draw(canvas, top);
        }
    }
}
