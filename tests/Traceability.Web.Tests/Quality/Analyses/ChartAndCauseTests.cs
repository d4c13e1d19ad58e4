using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality.Analyses;

/// <summary>
/// Ten diaphragms measured on the ring: 900, 902, 898, 900, 902 Hz by one film and 950 to 954 Hz (outside 880 to 920) by another; five of
/// FILM-1 pass and five of FILM-X fail, so that the cause is plain and can be counted by hand.
/// </summary>
public sealed class ChartAndCauseTests(ChartAndCauseTests.Measured measured) : IClassFixture<ChartAndCauseTests.Measured>
{
    private readonly Workshop w = measured.Workshop;

    /// <summary>
    /// Mean of 900, 902, 898, 900, 902 = 900.4; moving ranges 2, 4, 2, 2 with mean 2.5; sigma 2.5/1.128379 = 2.21556; limits 900.4 ∓
    /// 6.6467.
    /// </summary>
    [Fact]
    public async Task Limits_are_those_of_individuals_and_moving_ranges()
    {
        var chart = (await w.GetAsync($"quality/control-chart?stage=verify&characteristic=ringHz&to={measured.Between}")).Expect(200);
        Assert.Equal(5, chart.At("values").GetInt32());
        Assert.Equal(900.4, chart.At("limits.centre").GetDouble(), 9);
        Assert.Equal(2.21556, chart.At("sigma").GetDouble(), 4);
        Assert.Equal(907.0467, chart.At("limits.upper").GetDouble(), 3);
        Assert.Equal([900, 902, 898, 900, 902], chart.List("points").Select(p => p.At("value").GetDouble()));
        Assert.Contains("too-few-values", chart.At("capability.objections").EnumerateArray().Select(o => o.GetString()));
    }

    [Fact]
    public async Task A_point_leads_to_its_part()
    {
        var page = (
            await (await DeskClient.SignInAsync(w, Workshop.Quality)).GetAsync("/quality/control-chart?stage=verify&characteristic=ringHz")
        ).Expect(200);
        Assert.All(
            measured.Good.Concat(measured.Bad),
            serial => Assert.Contains($"<a href=\"/parts/{serial}\" tabindex=\"-1\"", page.Html, StringComparison.Ordinal)
        );
        Assert.Contains("diaphragm/verify", page.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_values_the_chart_says_what_it_needs()
    {
        var chart = (await w.GetAsync("quality/control-chart?stage=verify&characteristic=ringHz&from=2020-01-01&to=2020-01-02")).Expect(
            200
        );
        Assert.Equal("not enough data: needs at least 2 values, has 0", chart.Text("notEnough"));
        Assert.Equal("not enough data: needs at least 2 subgroups, has 0", chart.Text("subgroups.notEnough"));
    }

    /// <summary>5 of 5 failed with FILM-X, 0 of 5 elsewhere: Fisher's p is 2/(10 choose 5) = 2/252.</summary>
    [Fact]
    public async Task The_film_is_what_the_failures_have_in_common()
    {
        var answer = (await w.GetAsync("quality/causes?stage=verify")).Expect(200);
        Assert.Equal((10, 5), (answer.At("parts").GetInt32(), answer.At("failed").GetInt32()));
        var film = answer.List().Single(r => r.Text("level") == "FILM-X");
        Assert.Equal(
            (5, 5, 0, 5),
            (
                film.At("failed").GetInt32(),
                film.At("parts").GetInt32(),
                film.At("failedElsewhere").GetInt32(),
                film.At("partsElsewhere").GetInt32()
            )
        );
        Assert.Equal(2 / 252.0, film.At("comparison.p").GetDouble(), 12);
        Assert.False(film.At("comparison").Has("oddsRatio"));
    }

    [Fact]
    public async Task The_parts_of_a_level_are_listed()
    {
        var film = (await w.GetAsync("quality/causes?stage=verify"))
            .Expect(200)
            .List()
            .Single(r => r.Text("level") == "FILM-X")
            .Text("factor");
        var parts = (await w.GetAsync($"quality/causes/parts?stage=verify&factor={Uri.EscapeDataString(film)}&level=FILM-X"))
            .Expect(200)
            .List();
        Assert.Equal(measured.Bad.Order(StringComparer.Ordinal), parts.Select(p => p.Text("serial")).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Values_are_ranked_too()
    {
        var values = (await w.GetAsync("quality/causes?stage=verify&characteristic=ringHz")).Expect(200).List("values");
        var film = values.Single(v => v.Text("factor").StartsWith("film lot", StringComparison.Ordinal));
        Assert.Equal(10, film.At("values").GetInt32());
        Assert.Equal(1.0, Math.Abs(film.At("cliffsDelta").GetDouble()), 12);
    }

    [Theory]
    [InlineData("quality/causes?stage=mount", "not enough data: needs at least 1 failed parts, has 0")]
    [InlineData("quality/causes?stage=verify&from=2020-01-01&to=2020-02-01", "not enough data: needs at least 1 failed parts, has 0")]
    [InlineData("quality/causes?stage=verify&code=never-raised", "not enough data: needs at least 1 failed parts, has 0")]
    public async Task Where_the_data_cannot_say_the_answer_says_so(string path, string words) =>
        Assert.Equal(words, (await w.GetAsync(path)).Expect(200).Text("notEnough"));

    [Theory]
    [InlineData("quality/causes")]
    [InlineData("quality/causes?stage=nope")]
    [InlineData("quality/causes?stage=verify&characteristic=nope")]
    [InlineData("quality/causes/parts?stage=verify&factor=moon")]
    [InlineData("quality/control-chart?stage=verify")]
    [InlineData("quality/control-chart?characteristic=ringHz")]
    [InlineData("quality/control-chart?stage=verify&characteristic=nope")]
    [InlineData("quality/control-chart?stage=verify&characteristic=ringHz&by=moon")]
    [InlineData("quality/pareto?from=never")]
    public async Task What_cannot_be_asked_is_refused(string path) => (await w.GetAsync(path)).Expect(400);

    [Fact]
    public async Task The_codes_are_counted_by_stage()
    {
        var bars = (await w.GetAsync("quality/pareto")).Expect(200).List();
        Assert.Equal(("diaphragm/verify", 5), (bars.Single().Text("code"), bars.Single().At("count").GetInt32()));
    }

    [Fact]
    public async Task The_desk_says_what_waits()
    {
        var page = (await (await DeskClient.SignInAsync(w, Workshop.Quality)).GetAsync("/quality")).Expect(200);
        Assert.Contains("FILM-X", page.Words, StringComparison.Ordinal);
        Assert.Contains("5 nonconformities wait for a decision", page.Words, StringComparison.Ordinal);
        Assert.Contains("worse than the rest", page.Words, StringComparison.Ordinal);
    }

    /// <summary>The workshop of the summary, built once.</summary>
    public sealed class Measured : IAsyncLifetime
    {
        public Workshop Workshop { get; } = new();

        public IReadOnlyList<string> Good { get; private set; } = [];

        public IReadOnlyList<string> Bad { get; private set; } = [];

        /// <summary>A moment after the good parts and before the bad ones.</summary>
        public string Between { get; private set; } = "";

        public async Task InitializeAsync()
        {
            await Workshop.InitializeAsync();
            await WorkshopSetUp.LotAsync(Workshop, "FILM-X", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
            Good = await MeasuredAsync(Tests.Workshop.Film, 900, 902, 898, 900, 902);
            Workshop.Clock.Pass(TimeSpan.FromMinutes(1));
            Between = Uri.EscapeDataString(
                Workshop
                    .Clock.GetUtcNow()
                    .UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture)
            );
            Workshop.Clock.Pass(TimeSpan.FromMinutes(1));
            Bad = await MeasuredAsync("FILM-X", 950, 951, 952, 953, 954);
        }

        public Task DisposeAsync() => Workshop.DisposeAsync();

        private async Task<IReadOnlyList<string>> MeasuredAsync(string film, params decimal[] values)
        {
            var serials = new List<string>();
            foreach (var _ in values)
            {
                serials.Add(await Workshop.MountAsync(film));
            }

            await Workshop.CureAsync([.. serials]);
            foreach (var (serial, value) in serials.Zip(values))
            {
                await Workshop.VerifyAsync(serial, value);
            }

            return serials;
        }
    }
}
