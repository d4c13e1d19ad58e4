using Traceability.Documents.Drawing;

namespace Traceability.Documents.Labels;

/// <summary>Labels of one size in a starter pack.</summary>
/// <param name="Labels">The labels, in the order in which they are printed; with none, the pack has no page of them.</param>
/// <param name="Format">Their size.</param>
public sealed record StarterLabels(IReadOnlyList<LabelText> Labels, LabelFormat Format);

/// <summary>
/// All that a new bench needs on paper, in one file to print and cut: the action sheet first, then the labels of the station, the badges of
/// who works there, and the carriers.
/// </summary>
public static class StarterPack
{
    /// <summary>Renders the pack.</summary>
    /// <param name="title">Its title, such as "Starter pack BENCH-1".</param>
    /// <param name="sheetTitle">The title of the action sheet.</param>
    /// <param name="sheetSubtitle">What stands below it.</param>
    /// <param name="actions">The actions in the order of their use.</param>
    /// <param name="labels">The labels, size by size.</param>
    /// <exception cref="ArgumentException">A code is empty or cannot be written in the format's kind of code.</exception>
    public static byte[] Render(
        string title,
        string sheetTitle,
        string sheetSubtitle,
        IReadOnlyList<LabelText> actions,
        IReadOnlyList<StarterLabels> labels
    )
    {
        using var pdf = new PdfFile(title, "en");
        ActionSheet.AddPages(pdf, sheetTitle, sheetSubtitle, actions);
        foreach (var (texts, format) in labels)
        {
            LabelSheet.AddPages(pdf, texts, format);
        }

        return pdf.ToBytes();
    }
}
