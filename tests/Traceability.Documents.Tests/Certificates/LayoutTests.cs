using Traceability.Documents.Certificates;
using Traceability.Documents.Reports;
using Traceability.Documents.Tests.Reading;
using Traceability.Documents.Tests.Reports;
using Traceability.Domain.Certificates;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace Traceability.Documents.Tests.Certificates;

public sealed class LayoutTests
{
    /// Boxes of neighbouring lines touch; more than this is one text on another.
    private const double TouchPt = 1.2;

    public static TheoryData<string> Cases =>
        ["bare", "short", "full", "long names", "many rows", "a month", "an empty month", "a month of long names", "a month of many lots"];

    [Theory]
    [MemberData(nameof(Cases))]
    public void No_text_leaves_the_page_or_lies_on_another(string which)
    {
        foreach (var page in PdfText.Read(Rendered(which)).Pages)
        {
            var words = page.GetWords().Where(word => word.Letters[0].TextOrientation == TextOrientation.Horizontal).ToArray();
            Assert.NotEmpty(words);
            Assert.All(page.Letters, letter => AssertInside(page, letter.BoundingBox, letter.Value));
            for (var i = 0; i < words.Length; i++)
            {
                for (var j = i + 1; j < words.Length; j++)
                {
                    if (Overlap(words[i].BoundingBox, words[j].BoundingBox))
                        Assert.Fail($"page {page.Number}: '{words[i].Text}' and '{words[j].Text}' overlap");
                }
            }
        }
    }

    private static byte[] Rendered(string which) =>
        which switch
        {
            "a month" => MonthlyReportPdf.Render(Months.Ordinary),
            "an empty month" => MonthlyReportPdf.Render(Months.Empty),
            "a month of long names" => MonthlyReportPdf.Render(Months.LongNames),
            "a month of many lots" => MonthlyReportPdf.Render(Months.ManyLots),
            _ => CertificatePdf.Render(Certificate(which)),
        };

    private static CertificateDocument Certificate(string which) =>
        which switch
        {
            "bare" => Examples.Bare,
            "short" => Examples.Short,
            "full" => Examples.Full,
            "long names" => HardExamples.LongNames,
            _ => HardExamples.ManyRows(100),
        };

    private static void AssertInside(Page page, PdfRectangle box, string text) =>
        Assert.True(
            box.Left >= 20 && box.Right <= page.Width - 20 && box.Bottom >= 15 && box.Top <= page.Height - 20,
            $"page {page.Number}: '{text}' is at {box}"
        );

    private static bool Overlap(PdfRectangle a, PdfRectangle b) =>
        Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left) > TouchPt && Math.Min(a.Top, b.Top) - Math.Max(a.Bottom, b.Bottom) > TouchPt;
}
