using System.Globalization;
using System.Text.Json;
using Traceability.Web.Tests.Pages;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Quality.Analyses;

/// <summary>
/// FILM-Y is young: six diaphragms, two only mounted, four finished and stacked into two dual capsules, of which one fails at its
/// capacitance. FILM-1: one unit, through.
/// </summary>
public sealed class FilmLotStageTests(FilmLotStageTests.Young young) : IClassFixture<FilmLotStageTests.Young>
{
    private const string Lot = "FILM-Y";

    private readonly Workshop w = young.Workshop;

    [Fact]
    public async Task A_lot_is_counted_at_the_stages_that_it_reached_and_what_has_not_come_there_is_on_its_way()
    {
        var lot = await LotAsync();
        Assert.Equal(
            [
                ("diaphragm/mount", 6, 0),
                ("diaphragm/cure", 4, 0),
                ("diaphragm/verify", 4, 0),
                ("capsule/stack", 2, 0),
                ("capsule/capacitance", 2, 1),
            ],
            lot.List("stages").Select(s => (s.Text("stage"), s.At("reached").GetInt32(), s.At("failed").GetInt32()))
        );
        Assert.Equal((6, 4), (lot.At("started").GetInt32(), lot.At("onItsWay").GetInt32()));
        Assert.Equal(0, lot.At("passedFirst").GetInt32());
    }

    /// <summary>Two diaphragms in a capsule are judged once: one failure of two capsules, not two of four.</summary>
    [Fact]
    public async Task A_dual_capsule_that_fails_counts_once()
    {
        var lot = await LotAsync();
        Assert.Equal((1, 1), (lot.At("failed").GetInt32(), lot.At("failedAt.capsule").GetInt32()));
        Assert.Equal("capsules", lot.Text("counted"));
    }

    /// <summary>
    /// 4/4 and 6/6 and 2/2 and 1/2: S = 0.5, v = 1/(2 x 1), interval S^exp(-+ 1.959964 sqrt(0.5)/ln 0.5) by hand: 0.0060 to 0.9104. Of the
    /// stage alone, Wilson for 1 of 2: 0.0945 to 0.9055.
    /// </summary>
    [Fact]
    public async Task The_yield_is_the_product_over_the_stages_with_Greenwoods_interval()
    {
        var lot = await LotAsync();
        var (yield, stage) = (lot.At("firstPassYield"), lot.List("stages")[^1]);
        Assert.Equal(
            (0.5, 0.0060, 0.9104),
            (yield.At("value").GetDouble(), Math.Round(yield.At("lower").GetDouble(), 4), Math.Round(yield.At("upper").GetDouble(), 4))
        );
        Assert.Equal((0.0945, 0.9055), (Math.Round(stage.At("lower").GetDouble(), 4), Math.Round(stage.At("upper").GetDouble(), 4)));
        Assert.Equal(yield.At("value").GetDouble(), lot.At("rolledThroughputYield.value").GetDouble());
    }

    [Fact]
    public async Task The_page_the_file_the_report_of_the_month_and_the_list_of_parts_say_the_same()
    {
        var lot = await LotAsync();
        var sentence = lot.Text("sentence");
        Assert.Equal(
            "Diaphragms started: 6; on their way without a failure so far: 4. Failed, of those that reached the stage: Capacitance 1 of"
                + " 2. Yield over 5 stages: 50.0 % (95 % interval 0.6 to 91.0 %). "
                + "From the capsule on, capsules and units are counted: one with two diaphragms of this lot counts once.",
            sentence
        );
        var desk = await DeskClient.SignInAsync(w, Workshop.Quality);
        Assert.Contains(sentence, (await desk.GetAsync($"/quality/film-lots/{Lot}")).Expect(200).Words, StringComparison.Ordinal);
        var page = (await desk.GetAsync("/quality/film-lots")).Expect(200).Words;
        Assert.Contains(sentence, page, StringComparison.Ordinal);
        Assert.Contains("4 on their way", page, StringComparison.Ordinal);
        Assert.Contains("Capacitance: 1 of 2", page, StringComparison.Ordinal);
        Assert.Contains("Capacitance 1 of 2", (await desk.GetAsync("/quality")).Expect(200).Words, StringComparison.Ordinal);
        Assert.Contains(sentence, await FileAsync(), StringComparison.Ordinal);
        var month = w.Clock.GetUtcNow().ToString("yyyy-MM", CultureInfo.InvariantCulture);
        var line = (await w.GetAsync($"quality/monthly-report.json?month={month}"))
            .Expect(200)
            .List("filmLots.lots")
            .Single(l => l.Text("lot") == Lot);
        Assert.Equal((sentence, 0.5, 4), (line.Text("sentence"), line.At("firstPass.value").GetDouble(), line.At("inWork").GetInt32()));
        Assert.Equal(4, (await w.GetAsync($"quality/film-lots/{Lot}/parts?fate=in-work")).Expect(200).List().Count);
    }

    [Fact]
    public async Task What_is_kept_for_counting_agrees_with_the_facts()
    {
        await using var health = new HealthCheck(w);
        Assert.Empty(await health.DerivedAsync(mend: false));
    }

    private async Task<JsonElement> LotAsync() =>
        (await w.GetAsync("quality/film-lots")).Expect(200).List().Single(l => l.Text("lot") == Lot);

    private async Task<string> FileAsync()
    {
        var request = new HttpRequestMessage(HttpMethod.Get, "/api/v1/quality/film-lots");
        request.Headers.Accept.ParseAdd("text/csv");
        return (await w.SendAsync(request, Workshop.Quality)).Body;
    }

    /// <summary>The workshop of the summary, built once.</summary>
    public sealed class Young : IAsyncLifetime
    {
        public Workshop Workshop { get; } = new();

        public async Task InitializeAsync()
        {
            var w = Workshop;
            await w.InitializeAsync();
            await WorkshopSetUp.LotAsync(w, Lot, "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
            await w.UnitAsync();
            string[] finished = [.. await Task.WhenAll(w.MountAsync(Lot), w.MountAsync(Lot), w.MountAsync(Lot), w.MountAsync(Lot))];
            await w.CureAsync(finished);
            foreach (var serial in finished)
            {
                await w.VerifyAsync(serial, 900);
            }

            await w.CapsuleAsync(finished[0], finished[1]);
            var failing = await w.RegisterAsync("capsule");
            object[] fittings =
            [
                new { position = "front", child = finished[2] },
                new { position = "rear", child = finished[3] },
                new { position = "ring", lot = Tests.Workshop.Ring },
            ];
            await w.RecordAsync(failing, "stack", new { fittings });
            await w.RecordAsync(
                failing,
                "capacitance",
                new
                {
                    readings = new[]
                    {
                        new { characteristic = "capacitancePf", value = "55" },
                        new { characteristic = "roomHumidityPct", value = "45" },
                    },
                }
            );
            await w.MountAsync(Lot);
            await w.MountAsync(Lot);
        }

        public Task DisposeAsync() => Workshop.DisposeAsync();
    }
}
