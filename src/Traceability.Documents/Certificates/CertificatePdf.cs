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
    /// <param name="certificate">What it says.</param>
    /// <param name="logo">The bytes of the workshop's logo, SVG or PNG; null without one.</param>
    public static byte[] Render(CertificateDocument certificate, byte[]? logo = null)
    {
        using var drawn = logo is null ? null : Logo.Of(logo);
        var pages = Paginator.Paginate(CertificateBody.Strips(certificate, drawn), Sheet.Top, Sheet.Bottom);
        using var pdf = new PdfFile(
            $"Birth certificate {certificate.Serial}, revision {certificate.Revision}",
            CertificateWords.Language,
            $"{certificate.Identity.Model}, certificate {certificate.CertificateId}",
            certificate.WorkshopName,
            certificate.IssuedAt
        );
        pdf.AddPages(
            pages,
            new PageFurniture(
                $"Birth certificate   {certificate.Serial}",
                $"{certificate.WorkshopName}   {certificate.Identity.Model}".Trim(),
                $"Certificate {certificate.CertificateId}   Serial {certificate.Serial}   Revision {certificate.Revision}",
                certificate.InventedDataNotice
            ).Draw
        );
        return pdf.ToBytes();
    }
}
