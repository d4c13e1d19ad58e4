using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Traceability.Documents.Tests.Reading;

/// What a PDF says, read back by a library that had no part in writing it.
internal sealed class PdfText
{
    private PdfText(IReadOnlyList<Page> pages) => Pages = pages;

    public IReadOnlyList<Page> Pages { get; }

    /// All letters in the order of drawing, without white space: a text that was wrapped inside a cell still stands here in one piece.
    public string Unspaced =>
        string.Concat(
            Pages.SelectMany(page => page.Letters).Select(letter => letter.Value).Where(value => !string.IsNullOrWhiteSpace(value))
        );

    public static PdfText Read(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return new PdfText([.. document.GetPages()]);
    }

    public static string WithoutSpace(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    public void AssertHolds(string text) => Assert.Contains(WithoutSpace(text), Unspaced, StringComparison.Ordinal);
}
