using Traceability.Documents.Certificates;
using Traceability.Documents.Drawing;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Reports;

/// <summary>Lays a monthly report out on A4 pages.</summary>
public static class MonthlyReportPdf
{
    /// <summary>
    /// Renders the document as a tagged PDF. The same document gives the same text and pictures, though not the same bytes: PDFsharp
    /// tags its font subsets at random.
    /// </summary>
    public static byte[] Render(MonthlyReportDocument report)
    {
        var pages = Paginator.Paginate(ReportBody.Strips(report), Sheet.Top, Sheet.Bottom);
        var title = $"Quality report {report.Title}{(report.SoFar ? " so far" : "")}";
        using var pdf = new PdfFile(title, CertificateWords.Language, report.Period, report.WorkshopName, report.DrawnUpAt);
        pdf.AddPages(
            pages,
            new PageFurniture(
                title,
                report.WorkshopName,
                $"{title}   drawn up {CertificateWords.Moment(report.DrawnUpAt)}",
                report.InventedDataNotice
            ).Draw
        );
        return pdf.ToBytes();
    }
}
