using Traceability.Documents.Labels;
using Traceability.Documents.Tests.Reading;

namespace Traceability.Documents.Tests.Labels;

public sealed class StarterPackTests
{
    private static readonly LabelText[] Actions = [new("A.START.X", "Start", "Opens the stage.")];

    [Fact]
    public void A_pack_begins_with_the_action_sheet_and_has_a_page_for_every_size_of_label_that_was_chosen()
    {
        var pack = Render(
            new([new("S.BENCH-1.A", "Bench 1")], LabelFormat.Station),
            new([], LabelFormat.Badge),
            new([new("C.JIG-01.B", "JIG-01", "jig"), new("C.JIG-02.C", "JIG-02", "jig")], LabelFormat.Lot)
        );
        var pages = PdfText.Read(pack).Pages.Select(p => string.Join(' ', p.GetWords().Select(w => w.Text))).ToList();

        Assert.Equal(3, pages.Count);
        Assert.Contains("A.START.X", pages[0], StringComparison.Ordinal);
        Assert.Contains("S.BENCH-1.A", pages[1], StringComparison.Ordinal);
        Assert.Contains("C.JIG-02.C", pages[2], StringComparison.Ordinal);
    }

    private static byte[] Render(params StarterLabels[] labels) =>
        StarterPack.Render("Starter pack BENCH-1", "Action sheet", "Hang it at the bench.", Actions, labels);
}
