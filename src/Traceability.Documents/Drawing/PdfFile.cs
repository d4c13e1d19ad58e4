using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;
using Traceability.Documents.Fonts;

namespace Traceability.Documents.Drawing;

/// <summary>A PDF being written: A4, tagged, with a title and a language.</summary>
internal sealed class PdfFile : IDisposable
{
    public const double PageWidth = 595.28,
        PageHeight = 841.89;

    private readonly PdfDocument _pdf = new();
    private readonly UAManager _accessibility;

    public PdfFile(string title, string language, string? subject = null, string? author = null, DateTimeOffset? createdAt = null)
    {
        InterFontResolver.EnsureInstalled();
        _accessibility = UAManager.ForDocument(_pdf);
        _accessibility.SetDocumentLanguage(language);
        _pdf.Language = language;
        _pdf.ViewerPreferences.DisplayDocTitle = true;
        _pdf.Info.Title = title;
        _pdf.Info.Subject = subject ?? "";
        _pdf.Info.Author = author ?? "";
        if (createdAt is { } at)
            _pdf.Info.CreationDate = at.UtcDateTime;
    }

    public void AddPage(Action<PageCanvas> draw)
    {
        var page = _pdf.AddPage();
        (page.Width, page.Height) = (XUnit.FromPoint(PageWidth), XUnit.FromPoint(PageHeight));
        using var graphics = XGraphics.FromPdfPage(page);
        draw(new PageCanvas(graphics, _accessibility.StructureBuilder));
    }

    /// Strips on their pages, each page with its furniture, which is given the page's number from 0 and how many there are.
    public void AddPages(IReadOnlyList<IReadOnlyList<PlacedStrip>> pages, Action<PageCanvas, int, int> furniture)
    {
        for (var page = 0; page < pages.Count; page++)
        {
            var number = page;
            AddPage(canvas =>
            {
                canvas.Artifact(() => furniture(canvas, number, pages.Count));
                foreach (var (strip, top, repeated) in pages[number])
                {
                    if (repeated)
                        canvas.Artifact(() => strip.Draw(canvas, top));
                    else
                        strip.Draw(canvas, top);
                }
            });
        }
    }

    public byte[] ToBytes()
    {
        using var bytes = new MemoryStream();
        _pdf.Save(bytes, closeStream: false);
        return bytes.ToArray();
    }

    public void Dispose() => _pdf.Dispose();
}
