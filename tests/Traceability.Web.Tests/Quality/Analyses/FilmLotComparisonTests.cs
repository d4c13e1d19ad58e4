using System.Text.Json;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality.Analyses;

/// <summary>
/// A workshop small enough to be counted by hand. FILM-1: four diaphragms pass, two of them in a capsule in a unit that comes back. FILM-A:
/// three diaphragms, two fail on the ring, one of those passes when measured again. FILM-B: one is mounted and waits for its cure. FILM-C:
/// nothing.
/// </summary>
public sealed class FilmLotComparisonTests(FilmLotComparisonTests.Counted counted) : IClassFixture<FilmLotComparisonTests.Counted>
{
    private readonly Workshop w = counted.Workshop;

    [Fact]
    public async Task Every_lot_says_what_became_of_its_diaphragms()
    {
        var lots = (await w.GetAsync("quality/film-lots")).Expect(200).List();
        Assert.Equal((4, 2, 0, 1), Counts(lots, Workshop.Film));
        Assert.Equal((3, 1, 0, 2), Counts(lots, "FILM-A"));
        Assert.Equal((1, 1, 0, 0), Counts(lots, "FILM-B"));
        Assert.Equal((0, 0, 0, 0), Counts(lots, "FILM-C"));
        Assert.Equal(
            1,
            Lot((await w.GetAsync("quality/film-lots?stage=verify")).Expect(200).List(), "FILM-A").At("passedAfterRework").GetInt32()
        );
    }

    [Fact]
    public async Task Failures_are_said_by_place_and_a_unit_that_came_back_with_two_diaphragms_counts_once()
    {
        var lots = (await w.GetAsync("quality/film-lots")).Expect(200).List();
        Assert.Equal(2, Lot(lots, "FILM-A").At("failedAt.diaphragm").GetInt32());
        Assert.Equal(1, Lot(lots, Workshop.Film).At("failedAt.field").GetInt32());
        Assert.Equal((1, 1), Stage(lots, Workshop.Film, "unit/field"));
        Assert.Equal((3, 2), Stage(lots, "FILM-A", "diaphragm/verify"));
        Assert.Equal(1, Lot(lots, Workshop.Film).At("unitsReturned").GetInt32());
        Assert.Equal(1, Lot(lots, Workshop.Film).At("units").GetInt32());
    }

    /// <summary>
    /// S = 1/3, v = 2/(3 x 1), interval S^exp(-+ 1.959964 sqrt(v)/ln S) by hand: 0.0090 to 0.7741. What came back from the field is not
    /// part of it.
    /// </summary>
    [Fact]
    public async Task The_first_pass_yield_is_that_of_all_stages_with_Greenwoods_interval()
    {
        var lots = (await w.GetAsync("quality/film-lots")).Expect(200).List();
        var share = Lot(lots, "FILM-A").At("firstPassYield");
        Assert.Equal(1 / 3.0, share.At("value").GetDouble(), 12);
        Assert.Equal(0.0090, share.At("lower").GetDouble(), 4);
        Assert.Equal(0.7741, share.At("upper").GetDouble(), 4);
        Assert.Equal(1, Lot(lots, Workshop.Film).At("firstPassYield.value").GetDouble());
        Assert.Equal(
            0,
            Lot((await w.GetAsync("quality/film-lots?stage=field")).Expect(200).List(), Workshop.Film)
                .At("firstPassYield.value")
                .GetDouble()
        );
    }

    /// <summary>
    /// Wilson for 1 of 3, by hand with z = 1.959964: (1/3 + z²/6 ∓ z·sqrt((2/9)/3 + z²/36))/(1 + z²/3) = 0.0615 to 0.7923. The exact
    /// interval solves 1 - (1 - L)³ = 0.025 and (1 - U)³ + 3 U (1 - U)² = 0.025: 0.0084 to 0.9057.
    /// </summary>
    [Theory]
    [InlineData("", 0.0615, 0.7923)]
    [InlineData("?interval=clopper-pearson", 0.0084, 0.9057)]
    public async Task Each_stage_has_the_interval_that_was_asked_for(string query, double lower, double upper)
    {
        var stage = Lot((await w.GetAsync($"quality/film-lots{query}")).Expect(200).List(), "FILM-A")
            .List("stages")
            .Single(s => s.Text("stage") == "diaphragm/verify");
        Assert.Equal((lower, upper), (Math.Round(stage.At("lower").GetDouble(), 4), Math.Round(stage.At("upper").GetDouble(), 4)));
    }

    /// <summary>
    /// At one stage: 3 of FILM-A judged, 2 failed; 4 of FILM-1, none failed. Fisher: (3 choose 2)(4 choose 0)/(7 choose 2) = 3/21, the only
    /// table so extreme.
    /// </summary>
    [Fact]
    public async Task A_stage_alone_is_compared_by_its_own_verdicts()
    {
        var lots = (await w.GetAsync("quality/film-lots?stage=verify&stratify=none")).Expect(200).List();
        Assert.Equal((4, 0, 4, 0), Counts(lots, Workshop.Film));
        Assert.Equal((3, 0, 1, 2), Counts(lots, "FILM-A"));
        Assert.Equal((1, 1, 0, 0), Counts(lots, "FILM-B"));
        Assert.Equal(1 / 7.0, Lot(lots, "FILM-A").At("againstTheRest.p").GetDouble(), 12);
        Assert.False(Lot(lots, "FILM-A").At("worse").GetBoolean());
    }

    [Fact]
    public async Task A_lot_without_verdicts_says_what_is_missing()
    {
        var lots = (await w.GetAsync("quality/film-lots")).Expect(200).List();
        Assert.Equal(
            "not enough data: needs at least 1 parts that reached a stage, has 0",
            Lot(lots, "FILM-C").Text("firstPassYield.notEnough")
        );
        Assert.False(Lot(lots, "FILM-C").Has("p"));
    }

    [Fact]
    public async Task A_period_before_everything_is_empty()
    {
        var answer = (await w.GetAsync("quality/film-lots?from=2020-01-01&to=2020-12-31")).Expect(200);
        Assert.Empty(answer.List());
        Assert.Equal(0, answer.At("diaphragms").GetInt32());
        Assert.Contains(
            "No film was fitted in this period",
            (await PageAsync("/quality/film-lots?from=2020-01-01&to=2020-12-31")).Words,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_table_comes_as_csv()
    {
        var request = new HttpRequestMessage(HttpMethod.Get, "/api/v1/quality/film-lots");
        request.Headers.Accept.ParseAdd("text/csv");
        var lines = (await w.SendAsync(request, Workshop.Quality)).Body.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.StartsWith(
            "lot,supplier,state,held,started,inWork,onItsWay,judged,passedFirst,passedAfterRework,failed,failedAt.",
            lines[0],
            StringComparison.Ordinal
        );
        Assert.Contains(lines, l => l.StartsWith("FILM-A,Invented Films,released,false,3,1,1,3,0,0,2,", StringComparison.Ordinal));
    }

    [Fact]
    public async Task From_a_number_one_comes_to_its_parts()
    {
        var page = await PageAsync("/quality/film-lots");
        Assert.Contains("href=\"/quality/film-lots/FILM-A?fate=failed&amp;place=diaphragm\"", page.Html, StringComparison.Ordinal);
        var parts = await PageAsync("/quality/film-lots/FILM-A?fate=failed&place=diaphragm");
        Assert.All(counted.FailedOfA, serial => Assert.Contains($"/parts/{serial}", parts.Html, StringComparison.Ordinal));
        Assert.DoesNotContain(counted.PassedOfA, parts.Html, StringComparison.Ordinal);
        var listed = (await w.GetAsync("quality/film-lots/FILM-A/parts?fate=failed")).Expect(200).List();
        Assert.Equal(counted.FailedOfA.Order(StringComparer.Ordinal), listed.Select(p => p.Text("serial")).Order(StringComparer.Ordinal));
        Assert.Equal(
            counted.Unit,
            (await w.GetAsync($"quality/film-lots/{Workshop.Film}/parts?place=field")).Expect(200).List()[0].Text("unit")
        );
    }

    [Theory]
    [InlineData("from=yesterday", "from")]
    [InlineData("to=2026-02-30", "to")]
    [InlineData("from=2026-03-01&to=2026-02-01", "from")]
    [InlineData("from=0001-01-01", "from")]
    [InlineData("to=9999-12-31", "to")]
    [InlineData("model=NOPE", "model")]
    [InlineData("stage=nope", "stage")]
    [InlineData("interval=wald", "interval")]
    [InlineData("stratify=moon", "stratify")]
    public async Task What_cannot_be_asked_is_said_by_field(string query, string field) =>
        Assert.True((await w.GetAsync($"quality/film-lots?{query}")).Expect(400).At("errors").TryGetProperty(field, out _));

    [Fact]
    public async Task Builders_may_not_look() => (await w.GetAsync("quality/film-lots", Workshop.Builder)).Expect(403);

    [Fact]
    public async Task Parts_of_a_lot_that_is_no_film_are_not_found() =>
        (await w.GetAsync($"quality/film-lots/{Workshop.Ring}/parts")).Expect(404);

    /// <summary>First verdicts of verify: 4 + 3, 2 failed. Of mount: 8, of cure: 7, none failed.</summary>
    [Fact]
    public async Task Yields_by_stage_are_counted_by_first_verdicts()
    {
        var rows = (await w.GetAsync("quality/yield?by=stage")).Expect(200).List().ToDictionary(r => r.Text("group"));
        Assert.Equal((7, 5), (rows["diaphragm/verify"].At("judged").GetInt32(), rows["diaphragm/verify"].At("passedFirst").GetInt32()));
        Assert.Equal(8, rows["diaphragm/mount"].At("judged").GetInt32());
        Assert.Equal((7, 7), (rows["diaphragm/cure"].At("judged").GetInt32(), rows["diaphragm/cure"].At("passedFirst").GetInt32()));
    }

    /// <summary>
    /// FILM-A: mount 3/3, cure 3/3, verify 1/3; the product is 1/3, its lower end above 0.05 because three parts cannot say more.
    /// </summary>
    [Fact]
    public async Task The_rolled_throughput_yield_is_the_product_over_the_stages()
    {
        var row = (await w.GetAsync("quality/yield?by=film-lot")).Expect(200).List().Single(r => r.Text("group") == "FILM-A");
        Assert.Equal(3, row.At("stages").GetInt32());
        Assert.Equal(1 / 3.0, row.At("rolledThroughputYield.value").GetDouble(), 12);
        Assert.Equal(7 / 9.0, row.At("firstPassYield.value").GetDouble(), 12);
    }

    [Theory]
    [InlineData("model")]
    [InlineData("kind")]
    [InlineData("builder")]
    [InlineData("station")]
    [InlineData("route")]
    [InlineData("week")]
    [InlineData("month")]
    [InlineData("weekday")]
    public async Task Yields_by_anything_count_the_same_verdicts(string by)
    {
        var answer = (await w.GetAsync($"quality/yield?by={by}")).Expect(200);
        Assert.Equal(answer.At("judged").GetInt32(), answer.List().Sum(r => r.At("judged").GetInt32()));
        Assert.Equal((await w.GetAsync("quality/yield")).Json.At("judged").GetInt32(), answer.At("judged").GetInt32());
    }

    [Fact]
    public async Task A_yield_by_something_unknown_is_refused() => (await w.GetAsync("quality/yield?by=moon")).Expect(400);

    [Fact]
    public async Task The_page_of_yields_shows_the_figures()
    {
        var page = await PageAsync("/quality/yield?by=stage");
        Assert.Contains("5 of 7", page.Words, StringComparison.Ordinal);
        Assert.Contains("<svg class=\"interval\"", page.Html, StringComparison.Ordinal);
    }

    private async Task<DeskClient.Sheet> PageAsync(string path) =>
        (await (await DeskClient.SignInAsync(w, Workshop.Quality)).GetAsync(path)).Expect(200);

    private static JsonElement Lot(IEnumerable<JsonElement> lots, string number) => lots.Single(l => l.Text("lot") == number);

    private static (int Reached, int Failed) Stage(IEnumerable<JsonElement> lots, string number, string stage)
    {
        var found = Lot(lots, number).List("stages").Single(s => s.Text("stage") == stage);
        return (found.At("reached").GetInt32(), found.At("failed").GetInt32());
    }

    private static (int Started, int InWork, int PassedFirst, int Failed) Counts(IEnumerable<JsonElement> lots, string number)
    {
        var lot = Lot(lots, number);
        return (lot.At("started").GetInt32(), lot.At("inWork").GetInt32(), lot.At("passedFirst").GetInt32(), lot.At("failed").GetInt32());
    }

    /// <summary>The workshop of the summary, built once.</summary>
    public sealed class Counted : IAsyncLifetime
    {
        public Workshop Workshop { get; } = new();

        public IReadOnlyList<string> FailedOfA { get; private set; } = [];

        public string PassedOfA { get; private set; } = "";

        public string Unit { get; private set; } = "";

        public async Task InitializeAsync()
        {
            var w = Workshop;
            await w.InitializeAsync();
            foreach (var lot in new[] { "FILM-A", "FILM-B", "FILM-C" })
            {
                await WorkshopSetUp.LotAsync(w, lot, "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
            }

            string front = await w.DiaphragmAsync(),
                rear = await w.DiaphragmAsync();
            await w.DiaphragmAsync();
            await w.DiaphragmAsync();
            Unit = await w.UnitAsync(await w.CapsuleAsync(front, rear));
            (await w.PostAsync($"parts/{Unit}/certificates", new { }, Tests.Workshop.Quality)).Expect(201);
            (await w.PostAsync($"parts/{Unit}/shipments", new { }, Tests.Workshop.Quality)).Expect(201);
            (await w.PostAsync("returns", new { serial = Unit, complaint = "crackles" }, Tests.Workshop.ServiceDesk)).Expect(201);

            string scrapped = await w.DiaphragmAsync(950, "FILM-A"),
                again = await w.DiaphragmAsync(940, "FILM-A");
            PassedOfA = await w.DiaphragmAsync(900, "FILM-A");
            FailedOfA = [scrapped, again];
            await DecideAsync(
                again,
                new
                {
                    kind = "repair",
                    returnTo = "verify",
                    reason = "measured again",
                    pin = Tests.Workshop.PinOf(Tests.Workshop.Quality),
                }
            );
            await w.VerifyAsync(again, 905);
            await w.MountAsync("FILM-B");
        }

        public Task DisposeAsync() => Workshop.DisposeAsync();

        private async Task DecideAsync(string serial, object disposition)
        {
            var open = (await Workshop.GetAsync("nonconformities?open=true")).Expect(200).List().Single(n => n.Text("serial") == serial);
            (await Workshop.PostAsync($"nonconformities/{open.Id()}/disposition", disposition, Tests.Workshop.Quality)).Expect(201);
        }
    }
}
