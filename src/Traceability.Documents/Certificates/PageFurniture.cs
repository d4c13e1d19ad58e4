using PdfSharp.Drawing;
using Traceability.Documents.Drawing;
using Traceability.Documents.Fonts;

namespace Traceability.Documents.Certificates;

/// <summary>
/// What stands on every page: which document it is and whose, which page of how many, and the notice when the data are invented.
/// </summary>
/// <param name="Title">At the left of the head from the second page on.</param>
/// <param name="Subject">At the right of it.</param>
/// <param name="Identity">In the foot of every page.</param>
/// <param name="Notice">Below it, when the data are invented.</param>
internal sealed record PageFurniture(string Title, string Subject, string Identity, string? Notice)
{
    private static readonly TextStyle Running = new(InterFonts.Medium, 7.5, Ink.Soft);

    public void Draw(PageCanvas canvas, int page, int pages)
    {
        if (page == 0)
            RingMotif.Draw(canvas.Graphics, Sheet.MotifCentre, Sheet.MotifRadius);
        else
            DrawRunningHead(canvas);
        DrawFooter(canvas, page, pages);
    }

    private void DrawRunningHead(PageCanvas canvas)
    {
        SmallRing(canvas, new XPoint(Sheet.Margin + 7, 41));
        Fitted(canvas, Title, Running, Sheet.Margin + 22, 36, Sheet.Inner * 0.5);
        var (subject, style) = Running.Fitted(Subject, Sheet.Inner * 0.42);
        canvas.TextRight(subject, style, Sheet.Right, 36);
        Line(canvas, 54, Ink.BrassLight);
    }

    private void DrawFooter(PageCanvas canvas, int page, int pages)
    {
        Line(canvas, Sheet.Height - 48, Ink.BrassLight);
        Fitted(canvas, Identity, TextStyle.Footer, Sheet.Margin, Sheet.Height - 43, Sheet.Inner - 70);
        canvas.TextRight($"page {page + 1} of {pages}", TextStyle.Footer, Sheet.Right, Sheet.Height - 43);
        if (Notice is { } notice)
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
