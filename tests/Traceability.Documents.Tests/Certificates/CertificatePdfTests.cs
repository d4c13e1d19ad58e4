using Traceability.Documents.Certificates;
using Traceability.Documents.Tests.Reading;
using Traceability.Domain.Certificates;
using UglyToad.PdfPig;
using ZXing;

namespace Traceability.Documents.Tests.Certificates;

public sealed class CertificatePdfTests
{
    [Fact]
    public void A_full_certificate_says_all_that_its_document_says()
    {
        var certificate = Examples.Full;
        var text = PdfText.Read(CertificatePdf.Render(certificate));

        foreach (
            var said in new[]
            {
                certificate.CertificateId,
                certificate.Serial,
                certificate.Supersedes!,
                certificate.VerifyAddress,
                certificate.WorkshopName,
                certificate.InventedDataNotice!,
                certificate.Scope,
                "20 Nov 2026, 15:40 UTC+1",
            }
        )
            text.AssertHolds(said);
        foreach (var row in certificate.Contents)
            text.AssertHolds(
                row.Position
                    + row.Kind
                    + row.Identifier
                    + (row.Model ?? "")
                    + (row.Film is null ? "" : "6.0 µm film, 42 nm metal, 0.85 Ω/sq")
                    + row.Supplier
                    + (row.Supplier is null ? "" : ", ")
                    + row.SupplierLot
            );
        foreach (var value in certificate.Measurements.SelectMany(stage => stage.Values))
            text.AssertHolds(
                value.Label
                    + CertificateWords.Typeset(value.Value)
                    + value.Unit
                    + CertificateWords.Limits(value)
                    + CertificateWords.Number(value.Nominal)
                    + (value.Uncertainty ?? "–")
                    + value.Verdict
                    + value.CorrectedNote
            );
        foreach (var value in certificate.Patterns.SelectMany(pattern => pattern.Values))
            text.AssertHolds(CertificateWords.Typeset(value.Value) + value.Verdict);
        foreach (var instrument in certificate.Instruments)
            text.AssertHolds(
                instrument.Code
                    + instrument.Kind
                    + CertificateWords.Day(instrument.CalibratedOn)
                    + CertificateWords.Day(instrument.DueOn)
                    + instrument.CalibrationReference
            );
        foreach (var deed in certificate.BuiltBy.Append(certificate.ReleasedBy))
            text.AssertHolds(deed.StageTitle + deed.PartSerial + deed.Name + deed.Role + CertificateWords.Moment(deed.At));
        foreach (var carried in certificate.Nonconformities)
            text.AssertHolds(carried.Disposition + carried.Limits + carried.Reason + carried.DecidedBy);
        foreach (var change in certificate.Changes)
            text.AssertHolds(
                change.PartSerial
                    + CertificateWords.Sentence(change.What)
                    + change.Why
                    + change.By
                    + string.Concat(change.Values.Select(CertificateWords.Changed))
            );
        foreach (var statement in certificate.Statements)
            text.AssertHolds(statement.Term + statement.Text);
    }

    [Fact]
    public void The_film_lot_stands_on_the_first_page()
    {
        var first = PdfText.Read(CertificatePdf.Render(Examples.Full)).Pages[0];

        Assert.Contains("F-26-002-9", first.GetWords().Select(word => word.Text));
    }

    [Fact]
    public void The_code_on_the_first_page_leads_to_the_verify_address()
    {
        Assert.Equal(Examples.Full.VerifyAddress, Raster.OfPage(CertificatePdf.Render(Examples.Full)).Decode(BarcodeFormat.QR_CODE));
    }

    [Fact]
    public void Every_page_carries_number_serial_and_the_notice_of_invented_data()
    {
        var pages = PdfText.Read(CertificatePdf.Render(Examples.Full)).Pages;

        Assert.True(pages.Count > 2);
        Assert.All(
            pages,
            page =>
            {
                var words = string.Join(' ', page.GetWords().Select(word => word.Text));
                Assert.Contains($"page {page.Number} of {pages.Count}", words, StringComparison.Ordinal);
                Assert.Contains(
                    $"Certificate {Examples.Full.CertificateId} Serial {Examples.Full.Serial} Revision 2",
                    words,
                    StringComparison.Ordinal
                );
                Assert.Contains(Examples.Notice, words, StringComparison.Ordinal);
            }
        );
    }

    [Fact]
    public void A_certificate_with_nothing_but_an_identity_fills_one_page_without_empty_headings()
    {
        var text = PdfText.Read(CertificatePdf.Render(Examples.Bare));

        Assert.Single(text.Pages);
        text.AssertHolds("U-26-0001-4");
        text.AssertHolds("nothing: first certificate");
        Assert.DoesNotContain("Curves", text.Unspaced, StringComparison.Ordinal);
        Assert.DoesNotContain("Measuredvalues", text.Unspaced, StringComparison.Ordinal);
    }

    [Fact]
    public void A_revision_without_work_says_so()
    {
        var text = PdfText.Read(CertificatePdf.Render(Examples.Short with { Revision = 3, Supersedes = "C-26-00001-6" }));

        text.AssertHolds("What changed since revision 2");
        text.AssertHolds("Nothing was recorded on the unit or on anything in it since revision 2; the certificate was issued again.");
    }

    [Theory]
    [InlineData("-38.46", "\u221238.46")]
    [InlineData(">400", "> 400")]
    [InlineData(
        "limits -3 to 3, part UD-0014, 2026-11-25, IEC 60068-2-2, (-0.2)",
        "limits \u22123 to 3, part UD-0014, 2026-11-25, IEC 60068-2-2, (\u22120.2)"
    )]
    public void Numbers_are_printed_with_true_minus_signs_and_codes_keep_their_hyphens(string recorded, string printed) =>
        Assert.Equal(printed, CertificateWords.Typeset(recorded));

    [Fact]
    public void Two_hundred_values_run_over_pages_and_none_is_lost_or_said_twice()
    {
        var text = PdfText.Read(CertificatePdf.Render(HardExamples.ManyRows(200)));

        Assert.True(text.Pages.Count > 6);
        var words = text.Pages.SelectMany(page => page.GetWords()).Where(IsValue).Select(word => word.Text).ToArray();
        Assert.Equal(Enumerable.Range(0, 200).Select(HardExamples.Digits), words);
    }

    [Fact]
    public void A_stage_that_runs_over_a_page_is_named_again_on_the_next()
    {
        var pages = PdfText
            .Read(CertificatePdf.Render(HardExamples.ManyRows(200)))
            .Pages.Select(page => page.GetWords().ToArray())
            .Where(words => words.Any(IsValue))
            .ToArray();

        Assert.True(pages.Length > 3);
        Assert.All(
            pages,
            words =>
            {
                var firstValue = words.Where(IsValue).Max(word => word.BoundingBox.Bottom);
                Assert.Contains(words, word => word.Text == "endurance" && word.BoundingBox.Bottom > firstValue);
                Assert.Contains(words, word => word.Text == "Uncertainty" && word.BoundingBox.Bottom > firstValue);
            }
        );
    }

    [Fact]
    public void Long_lots_names_and_words_are_wrapped_and_whole()
    {
        var text = PdfText.Read(CertificatePdf.Render(HardExamples.LongNames));

        text.AssertHolds(HardExamples.LongLot);
        text.AssertHolds(HardExamples.LongSerial);
        text.AssertHolds(HardExamples.Unbroken);
        text.AssertHolds(HardExamples.LongNames.WorkshopName);
        text.AssertHolds("Bartholomäa-Philippine Řezáčová-Œuvrard von und zu Hohenmühle");
        text.AssertHolds("Ř Ω µ ſ Ж ψ ≤ ≥ ± ° … – “ ” € Ł ő ş ğ İ");
    }

    [Fact]
    public void Text_that_no_font_can_show_does_not_break_the_certificate()
    {
        var certificate = Examples.Short with { WorkshopName = "a\u0000b\ud800c\u200b\t\r\nd 漢字 \U0001F399 e\u0301" };

        PdfText.Read(CertificatePdf.Render(certificate)).AssertHolds("U-26-0001-4");
    }

    [Fact]
    public void A_note_longer_than_a_page_is_carried_on()
    {
        var story = string.Join(' ', Enumerable.Range(0, 4000).Select(i => $"w{i}"));
        var value = new MeasuredValue("Capacitance", "52.4", "pF", Verdict: VerdictWords.Within, CorrectedNote: story);
        var certificate = Examples.Short with
        {
            Measurements = [new("K-26-0031-9", "capsule", "Capacitance", Examples.At(10, 9), [value])],
            Statements = [new("Story", story)],
        };
        var text = PdfText.Read(CertificatePdf.Render(certificate));

        var counts = text.Pages.SelectMany(page => page.GetWords()).CountBy(word => word.Text).ToDictionary();
        Assert.All(Enumerable.Range(0, 4000), i => Assert.Equal(2, counts.GetValueOrDefault($"w{i}")));
    }

    [Fact]
    public void The_file_is_tagged_and_names_its_title_and_language()
    {
        using var pdf = PdfDocument.Open(CertificatePdf.Render(Examples.Short));
        var catalog = pdf.Structure.Catalog.CatalogDictionary;

        Assert.Equal("Birth certificate U-26-0001-4, revision 1", pdf.Information.Title);
        Assert.Contains("en-GB", catalog.Data["Lang"].ToString(), StringComparison.Ordinal);
        Assert.True(catalog.Data.ContainsKey("StructTreeRoot"));
        Assert.True(catalog.Data.ContainsKey("MarkInfo"));
    }

    [Fact]
    public async Task Four_threads_at_once_write_the_same_text()
    {
        var expected = PdfText.Read(CertificatePdf.Render(Examples.Full)).Unspaced;

        var texts = await Task.WhenAll(
            Enumerable
                .Range(0, 4)
                .Select(_ =>
                    Task.Run(() =>
                        Enumerable.Range(0, 5).Select(_ => PdfText.Read(CertificatePdf.Render(Examples.Full)).Unspaced).ToArray()
                    )
                )
        );

        Assert.All(texts.SelectMany(text => text), text => Assert.Equal(expected, text));
    }

    private static bool IsValue(UglyToad.PdfPig.Content.Word word) => word.Text.StartsWith("4.00", StringComparison.Ordinal);
}
