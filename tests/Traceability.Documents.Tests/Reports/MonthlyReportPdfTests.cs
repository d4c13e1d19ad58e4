using Traceability.Documents.Charts;
using Traceability.Documents.Reports;
using Traceability.Documents.Tests.Reading;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Tests.Reports;

public sealed class MonthlyReportPdfTests
{
    private static readonly string[] Sections =
    [
        "Finished and shipped",
        "Yield by model and stage",
        "Film lots",
        "What failed most often",
        "Open nonconformities",
        "Holds in force",
        "Returns",
        "Yield over twelve months",
        "Control charts",
        "Instruments",
    ];

    [Fact]
    public void A_report_says_every_section_with_its_figures_and_how_they_were_computed()
    {
        var report = Months.Ordinary;
        var text = PdfText.Read(MonthlyReportPdf.Render(report));

        foreach (
            var said in Sections.Concat([
                report.WorkshopName,
                report.Title,
                report.Period,
                report.InventedDataNotice!,
                report.FilmLots.Year,
            ])
        )
            text.AssertHolds(said);
        foreach (
            var computed in new[]
            {
                report.Output.Computed,
                report.Yields.Computed,
                report.FilmLots.Computed,
                report.Failures.Computed,
                report.Waiting.Computed,
                report.Holds.Computed,
                report.Returns.Computed,
                report.Trend.Computed,
                report.Control.Computed,
                report.Instruments.Computed,
            }
        )
            text.AssertHolds($"How this was computed: {computed}");
        foreach (var model in report.Output.ByModel)
            text.AssertHolds($"{model.Model}{model.Finished}{model.Shipped}{model.SentAgain}");
        foreach (var line in report.Yields.Models.SelectMany(m => m.Stages))
            text.AssertHolds(
                $"{line.Title}{line.Kind.Replace('-', ' ')}{ReportWords.Counts(line.Share)}"
                    + $"{ReportWords.Percent(line.Share.Value)}{ReportWords.Range(line.Share)}"
                    + $"{ReportWords.Percent(line.Before.Value)}{ReportWords.Counts(line.Before)}{line.Change}"
            );
        foreach (var bar in report.Failures.Bars)
            text.AssertHolds($"{bar.Code}{bar.Count}{ReportWords.Percent(bar.Share)}{ReportWords.Percent(bar.Cumulative)}");
        foreach (var waiting in report.Waiting.Lines)
            text.AssertHolds($"{waiting.AgeDays} d{waiting.Serial}{waiting.Model}{waiting.StageTitle}");
        foreach (var hold in report.Holds.Lines)
            text.AssertHolds($"{hold.What}{hold.Reason}{hold.HeldBy}");
        foreach (var returned in report.Returns.Lines)
            text.AssertHolds(returned.Complaint + returned.Found + returned.Done);
        foreach (var instrument in report.Instruments.Lines)
            text.AssertHolds(instrument.Why);
    }

    [Fact]
    public void A_film_lot_that_stands_out_is_marked_with_its_numbers()
    {
        var text = PdfText.Read(MonthlyReportPdf.Render(Months.Ordinary));

        text.AssertHolds("F-26-032stands out12" + "9" + "Resonance on the ring 1 of 4, Insulation test 8 of 11");
        text.AssertHolds("fails more often");
        text.AssertHolds("1 lot stands out among them:");
    }

    [Fact]
    public void Charts_have_their_sentence_and_those_not_drawn_are_named()
    {
        var report = Months.Ordinary;
        var text = PdfText.Read(MonthlyReportPdf.Render(report));

        Assert.Equal(3, report.Control.Charts.Count);
        foreach (var chart in report.Control.Charts)
        {
            text.AssertHolds(chart.Title);
            text.AssertHolds(chart.Sentence);
        }

        text.AssertHolds(
            "Left out: 1 main characteristic, with values in the month"
                + "HERON-D2 unit, Final inspection: Faults of the surface (1 value, too few for limits)."
        );
        foreach (var month in report.Trend.Months)
            text.AssertHolds(month.Title);
    }

    [Fact]
    public void A_month_with_nothing_says_so_in_every_section()
    {
        var report = Months.Empty;
        var text = PdfText.Read(MonthlyReportPdf.Render(report));

        text.AssertHolds(report.Nothing!);
        foreach (
            var none in new[]
            {
                report.Output.None,
                report.Yields.None,
                report.FilmLots.None,
                report.Failures.None,
                report.Waiting.None,
                report.Holds.None,
                report.Returns.None,
                report.Trend.None,
                report.Control.None,
                report.Instruments.None,
            }
        )
            text.AssertHolds(none!);
        foreach (var section in Sections)
            text.AssertHolds(section);
        Assert.True(text.Pages.Count <= 2, $"{text.Pages.Count} pages");
    }

    [Fact]
    public void Many_film_lots_run_over_pages_under_repeated_headings_and_none_is_lost()
    {
        var report = Months.ManyLots;
        var pages = PdfText
            .Read(MonthlyReportPdf.Render(report))
            .Pages.Select(page => page.GetWords().Select(word => word.Text).ToArray())
            .ToArray();

        var lots = pages.SelectMany(words => words).Where(IsLot).ToArray();
        Assert.Equal(report.FilmLots.Lots.Select(l => l.Lot), lots);
        var withLots = pages.Where(words => words.Any(IsLot)).ToArray();
        Assert.True(withLots.Length > 2, $"{withLots.Length} pages");
        Assert.All(withLots, words => Assert.Contains("Started", words));
        Assert.Equal("F-077", lots[0]);

        static bool IsLot(string word) => word.Length == 5 && word.StartsWith("F-", StringComparison.Ordinal);
    }

    [Fact]
    public void Long_names_are_wrapped_and_whole()
    {
        var text = PdfText.Read(MonthlyReportPdf.Render(Months.LongNames));

        text.AssertHolds(Months.LongName);
        text.AssertHolds(Months.Unbroken);
        text.AssertHolds($"FILM-{Months.Unbroken}");
        text.AssertHolds("and 48 more");
    }

    [Fact]
    public void The_same_facts_give_the_same_text() =>
        Assert.Equal(
            PdfText.Read(MonthlyReportPdf.Render(MonthlyReport.Of(MonthFacts.Ordinary()))).Unspaced,
            PdfText.Read(MonthlyReportPdf.Render(Months.Ordinary)).Unspaced
        );

    [Fact]
    public void Pictures_are_described_to_those_who_do_not_see_them()
    {
        Assert.Contains("March 2026: nothing judged", YieldChart.Describe(Months.Ordinary.Trend), StringComparison.Ordinal);
        Assert.Contains("rule", ControlChart.Describe(Months.Ordinary.Control.Charts[0]), StringComparison.Ordinal);
        Assert.StartsWith("<svg", YieldChart.ToSvg(Months.Ordinary.Trend), StringComparison.Ordinal);
    }

    [Fact]
    public void The_month_that_is_not_over_is_told_so_far()
    {
        var now = MonthFacts.At(10, 20, 9);
        var facts = MonthFacts.Ordinary() with
        {
            DrawnUpAt = now,
            Month = ReportMonth.Read("2026-10", now, Domain.Values.WorkshopCalendar.Utc).Month!,
        };
        var text = PdfText.Read(MonthlyReportPdf.Render(MonthlyReport.Of(facts)));

        text.AssertHolds("October 2026 so far, as of 20 Oct 2026, 09:00");
        text.AssertHolds("Quality report October 2026 so far");
    }
}
