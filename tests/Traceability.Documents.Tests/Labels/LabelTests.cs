using Traceability.Documents.Labels;
using Traceability.Documents.Tests.Reading;
using ZXing;

namespace Traceability.Documents.Tests.Labels;

public sealed class LabelTests
{
    private static readonly LabelText[] Fifty =
    [
        .. Enumerable
            .Range(0, 50)
            .Select(i => new LabelText($"P.K-26-{i:0000}.X", $"Capsule K-26-{i:0000}", "Heron D2 capsule, 6 µm, Jiří Řezáč")),
    ];

    public static TheoryData<string, int, int> Formats =>
        new()
        {
            { "part", 4, 11 },
            { "lot", 3, 8 },
            { "badge", 2, 5 },
            { "station", 2, 4 },
        };

    [Theory]
    [MemberData(nameof(Formats))]
    public void Every_code_is_printed_in_letters_and_once(string which, int columns, int rows)
    {
        var text = PdfText.Read(LabelSheet.Render("Labels", Fifty, Format(which)));

        Assert.Equal((50 + columns * rows - 1) / (columns * rows), text.Pages.Count);
        Assert.Equal(
            Fifty.Select(label => label.Code),
            text.Pages.SelectMany(page => page.GetWords())
                .Select(word => word.Text)
                .Where(word => word.StartsWith("P.K", StringComparison.Ordinal))
                .Order()
        );
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Each_label_of_a_page_is_read_back_as_its_own_code(string which, int columns, int rows)
    {
        var format = Format(which);
        var page = Raster.OfPage(LabelSheet.Render("Labels", Fifty, format), dotsPerInch: 200);

        // The label's left part: what a scanner held over it sees.
        var (marginX, marginY) = (28 / 595.28, 28 / 841.89);
        var (width, height) = ((1 - 2 * marginX) / columns, (1 - 2 * marginY) / rows);
        for (var i = 0; i < columns * rows; i++)
        {
            var (left, top) = (marginX + i % columns * width, marginY + i / columns * height);
            var seen = page.Crop(left + 0.004, top + 0.004, left + width * (format.DataMatrix ? 0.42 : 0.56), top + height * 0.78);
            Assert.Equal(Fifty[i].Code, seen.Decode(format.DataMatrix ? BarcodeFormat.DATA_MATRIX : BarcodeFormat.QR_CODE));
        }
    }

    [Fact]
    public void No_label_chosen_gives_a_page_that_says_so()
    {
        PdfText.Read(LabelSheet.Render("Labels", [], LabelFormat.Lot)).AssertHolds("No labels were chosen.");
    }

    [Fact]
    public void A_long_code_is_made_smaller_and_not_cut()
    {
        var code = "P." + new string('W', 60) + ".X";

        PdfText.Read(LabelSheet.Render("Labels", [new(code, "Long", null)], LabelFormat.Part)).AssertHolds(code);
    }

    [Fact]
    public void A_long_title_stays_inside_its_label()
    {
        var label = new LabelText(
            "P.1.X",
            string.Join(' ', Enumerable.Repeat("Bartholomäa", 30)),
            string.Join(' ', Enumerable.Repeat("detail", 30))
        );
        var page = PdfText.Read(LabelSheet.Render("Labels", [label], LabelFormat.Part)).Pages[0];

        Assert.All(
            page.Letters,
            letter =>
            {
                Assert.InRange(letter.BoundingBox.Right, 28, 28 + (page.Width - 56) / 4);
                Assert.InRange(letter.BoundingBox.Bottom, page.Height - 28 - (page.Height - 56) / 11, page.Height - 28);
            }
        );
    }

    [Fact]
    public void The_action_sheet_holds_every_action_and_its_codes_are_read_one_by_one()
    {
        LabelText[] actions =
        [
            .. new[]
            {
                "Start",
                "Done",
                "Abandon",
                "Undo",
                "Note",
                "Help",
                "Yes",
                "No",
                "Again",
                "Next",
                "Sign out",
                "Pause",
                "Last",
            }.Select(word => new LabelText($"A.{word.ToUpperInvariant().Replace(' ', '-')}.K", word, $"What {word} does")),
        ];
        var pdf = ActionSheet.Render("Action sheet", "Scan an action at any time.", actions);
        var text = PdfText.Read(pdf);

        Assert.Equal(2, text.Pages.Count);
        foreach (var action in actions)
            text.AssertHolds(action.Code + action.Detail);
        var page = Raster.OfPage(pdf);
        for (var i = 0; i < 12; i++)
        {
            var (left, top) = (0.07 + i % 3 * 0.286, 0.1 + i / 3 * 0.212);
            Assert.Equal(actions[i].Code, page.Crop(left, top, left + 0.286, top + 0.18).Decode(BarcodeFormat.QR_CODE));
        }
    }

    private static LabelFormat Format(string which) =>
        which switch
        {
            "part" => LabelFormat.Part,
            "lot" => LabelFormat.Lot,
            "badge" => LabelFormat.Badge,
            _ => LabelFormat.Station,
        };
}
