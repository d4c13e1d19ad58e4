using PdfSharp.Drawing;
using Traceability.Documents.Drawing;
using Traceability.Documents.Fonts;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>What stands on every page: whose certificate it is, which page of how many, and the notice when the data are invented.</summary>
internal static class PageFurniture
{
    private static readonly TextStyle Running = new(InterFonts.Medium, 7.5, Ink.Soft);

    public static void Draw(PageCanvas canvas, CertificateDocument certificate, int page, int pages)
    {
        if (page == 0)
            RingMotif.Draw(canvas.Graphics, Sheet.MotifCentre, Sheet.MotifRadius);
        else
            DrawRunningHead(canvas, certificate);
        DrawFooter(canvas, certificate, page, pages);
    }

    private static void DrawRunningHead(PageCanvas canvas, CertificateDocument certificate)
    {
        SmallRing(canvas, new XPoint(Sheet.Margin + 7, 41));
        var serial = $"Birth certificate   {certificate.Serial}";
        Fitted(canvas, serial, Running, Sheet.Margin + 22, 36, Sheet.Inner * 0.5);
        var (model, style) = Running.Fitted($"{certificate.WorkshopName}   {certificate.Identity.Model}", Sheet.Inner * 0.42);
        canvas.TextRight(model, style, Sheet.Right, 36);
        Line(canvas, 54, Ink.BrassLight);
    }

    private static void DrawFooter(PageCanvas canvas, CertificateDocument certificate, int page, int pages)
    {
        Line(canvas, Sheet.Height - 48, Ink.BrassLight);
        var identity = $"Certificate {certificate.CertificateId}   Serial {certificate.Serial}   Revision {certificate.Revision}";
        Fitted(canvas, identity, TextStyle.Footer, Sheet.Margin, Sheet.Height - 43, Sheet.Inner - 70);
        canvas.TextRight($"page {page + 1} of {pages}", TextStyle.Footer, Sheet.Right, Sheet.Height - 43);
        if (certificate.InventedDataNotice is { } notice)
        {
            var (line, style) = TextStyle.Alert.Fitted(notice, Sheet.Inner);
            canvas.TextCentred(line, style, Sheet.Width / 2, Sheet.Height - 32);
        }
    }

    private static void Fitted(PageCanvas canvas, string text, TextStyle style, double x, double top, double width)
    {
        var (line, fitted) = style.Fitted(text, width);
        canvas.Text(line, fitted, x, top);
    }

    private static void SmallRing(PageCanvas canvas, XPoint centre)
    {
        foreach (var (radius, weight) in new[] { (7.0, 0.9), (5.2, 0.5), (1.0, 0.5) })
            canvas.Graphics.DrawEllipse(Ink.Pen(Ink.BrassLight, weight), centre.X - radius, centre.Y - radius, 2 * radius, 2 * radius);
    }

    private static void Line(PageCanvas canvas, double y, XColor colour) =>
        canvas.Graphics.DrawLine(Ink.Pen(colour, 0.5), Sheet.Margin, y, Sheet.Right, y);
}
