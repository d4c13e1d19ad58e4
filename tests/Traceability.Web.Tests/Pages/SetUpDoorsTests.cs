using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Web.Tests.Pages;

/// <summary>What no part's ledger tells: the same rows are stored by page as by API.</summary>
public sealed partial class SetUpDoorsTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_route_loaded_by_page_stores_the_same_facts_as_by_API()
    {
        var route = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "Routes", "unit.yaml"));
        string Of(string model) => route.Replace("TEST-1", model, StringComparison.Ordinal);
        (await workshop.PostAsync("routes", new StringContent(Of("TWIN-A"), System.Text.Encoding.UTF8, "text/yaml"), Workshop.Lead)).Expect(
            201
        );
        var lead = await DeskClient.SignInAsync(workshop, Workshop.Lead);
        (await lead.SendAsync("/setup/routes", "load", ("text", Of("TWIN-B")))).Expect(200);
        var (byApi, byPage) = await PairAsync<RouteRevision>(r => r.Model == "TWIN-A", r => r.Model == "TWIN-B");
        Assert.Equal(byApi.Replace("TWIN-A", "TWIN", StringComparison.Ordinal), byPage.Replace("TWIN-B", "TWIN", StringComparison.Ordinal));
        Assert.Contains("TWIN", byPage, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_instrument_token_made_and_revoked_by_page_stores_the_same_facts_as_by_API()
    {
        (await workshop.PostAsync("instruments/RB-1/tokens", new { title = "bench by API" }, Workshop.Lead)).Expect(201);
        var lead = await DeskClient.SignInAsync(workshop, Workshop.Lead);
        (await lead.SendAsync("/instruments/RB-1/tokens", "make", ("title", "bench by page"))).Expect(200);
        var (byApi, byPage) = await PairAsync<InstrumentToken>(t => t.Title == "bench by API", t => t.Title == "bench by page");
        Assert.Equal(byApi.Replace("by API", "", StringComparison.Ordinal), byPage.Replace("by page", "", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_limited_concession_by_page_stores_the_same_facts_as_by_API()
    {
        (
            await workshop.PostAsync(
                "quality/concessions",
                new
                {
                    reason = "asked for by API",
                    pin = Workshop.PinOf(Workshop.Quality),
                    stage = "verify",
                    mostParts = 3,
                },
                Workshop.Quality
            )
        ).Expect(201);
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        (
            await desk.SendAsync(
                "/concessions",
                "give",
                ("stage", "verify"),
                ("mostParts", "3"),
                ("reason", "asked for by page"),
                ("_Pin", Workshop.PinOf(Workshop.Quality))
            )
        ).Expect(200);
        var (byApi, byPage) = await PairAsync<ConcessionPermit>(c => c.Reason == "asked for by API", c => c.Reason == "asked for by page");
        Assert.Equal(byApi.Replace("by API", "", StringComparison.Ordinal), byPage.Replace("by page", "", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_gauge_study_designed_by_page_stores_the_same_facts_as_by_API()
    {
        object study = new
        {
            title = "by API",
            characteristic = "ringHz",
            unit = "Hz",
            instrumentKind = "resonance-bench",
            parts = new[] { "P1", "P2" },
            people = new[] { Workshop.Builder, Workshop.OtherBuilder },
            repeats = 2,
            lower = 880,
            upper = 920,
        };
        (await workshop.PostAsync("quality/gauge-studies", study, Workshop.Quality)).Expect(201);
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        (
            await desk.SendAsync(
                "/gauge-studies",
                "design",
                ("title", "by page"),
                ("characteristic", "ringHz"),
                ("unit", "Hz"),
                ("instrumentKind", "resonance-bench"),
                ("parts", "P1\nP2"),
                ("people", $"{Workshop.Builder}\n{Workshop.OtherBuilder}"),
                ("repeats", "2"),
                ("lower", "880"),
                ("upper", "920")
            )
        ).Expect(200);
        var (byApi, byPage) = await PairAsync<MeasurementStudy>(s => s.Title == "by API", s => s.Title == "by page");
        Assert.Equal(byApi.Replace("by API", "", StringComparison.Ordinal), byPage.Replace("by page", "", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_correction_by_scan_stores_the_same_facts_as_by_API()
    {
        var (byApi, byScan) = (await workshop.RegisterAsync("diaphragm"), await workshop.RegisterAsync("diaphragm"));
        var attempt = await workshop.OpenAsync(byApi, "mount");
        (await workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "film", lot = Workshop.Film })).Expect(201);
        var reading = (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "coarseHz", value = 9000 })).Expect(
            201
        );
        (
            await workshop.PostAsync(
                $"readings/{reading.List("readings")[0].At("id").GetGuid()}/corrections",
                new { value = 900.0m, reason = "mistyped at the station" }
            )
        ).Expect(201);
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(
            Workshop.Builder,
            Workshop.PinOf(Workshop.Builder),
            "BENCH-1",
            byScan,
            "START",
            Workshop.Film,
            "9000",
            "CORRECT",
            "900.0",
            "MISTYPED"
        );
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byScan));
        Assert.Contains("correct-reading", await workshop.LastAsync(byScan), StringComparison.Ordinal);
    }

    private async Task<(string ByApi, string ByPage)> PairAsync<T>(
        System.Linq.Expressions.Expression<Func<T, bool>> byApi,
        System.Linq.Expressions.Expression<Func<T, bool>> byPage
    )
        where T : class
    {
        await using var scope = workshop.Services.CreateAsyncScope();
        var rows = scope.ServiceProvider.GetRequiredService<WorkshopContext>().Set<T>().AsNoTracking();
        return (Told(await rows.SingleAsync(byApi)), Told(await rows.SingleAsync(byPage)));
    }

    /// <summary>The row without what must differ: its own id, its number, its moments, what is drawn by lot.</summary>
    private static string Told<T>(T row) => Differing().Replace(JsonSerializer.Serialize(row), "\"$1\":\"...\"");

    [GeneratedRegex("\"(Id|Number|Hash|OccurredAt|RecordedAt)\":(\"[^\"]*\"|\\{[^}]*\\}|\\[[^\\]]*\\])")]
    private static partial Regex Differing();
}
