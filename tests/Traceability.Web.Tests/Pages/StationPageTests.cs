using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Domain.Codes;
using Traceability.Persistence.Model;

namespace Traceability.Web.Tests.Pages;

public sealed class StationPageTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_whole_stage_is_recorded_by_scans_alone()
    {
        var serial = await workshop.RegisterAsync("diaphragm", "JIG-21");
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", PrintedCode.For(CodeKind.Carrier, "JIG-21").Text);
        Assert.Contains($"{serial}", visitor.Now.Text, StringComparison.Ordinal);
        Assert.Contains("Scan START.", visitor.Now.Prompt, StringComparison.Ordinal);
        await visitor.ScanAsync("START");
        Assert.Contains("scan a film lot", visitor.Now.Prompt, StringComparison.Ordinal);
        await visitor.ScanAsync(PrintedCode.For(CodeKind.Lot, Workshop.Film).Text, "850.50");
        Assert.Contains("850.50 Hz: inside (700 to 1100 Hz)", visitor.Now.Prompt, StringComparison.Ordinal);
        await visitor.ScanAsync("DONE");
        Assert.Contains($"{serial}: Mount passed.", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Equal("cure", (await workshop.GetAsync($"parts/{serial}")).Expect(200).Text("stage"));
    }

    [Fact]
    public async Task The_station_names_the_best_pair_and_then_the_best_mate_for_what_is_fitted()
    {
        var (front, near, far) = (
            await workshop.DiaphragmAsync(901),
            await workshop.DiaphragmAsync(903),
            await workshop.DiaphragmAsync(918)
        );
        var capsule = await workshop.RegisterAsync("capsule");
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", capsule, "START");
        Assert.Contains("Best pairs of all free parts", visitor.Now.Text, StringComparison.Ordinal);
        Assert.Contains($"{front} with {near}", visitor.Now.Text, StringComparison.Ordinal);
        await visitor.ScanAsync(front);
        Assert.Contains("Best to take: rear", visitor.Now.Text, StringComparison.Ordinal);
        Assert.Contains($"how well they go with {front} (901 Hz, {Workshop.Film})", visitor.Now.Text, StringComparison.Ordinal);
        Assert.True(visitor.Now.Text.IndexOf(near, StringComparison.Ordinal) < visitor.Now.Text.IndexOf(far, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_page_leaves_the_same_facts_as_the_API()
    {
        var byApi = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(byApi, "mount");
        (await workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "film", lot = Workshop.Film })).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "coarseHz", value = "850.50" })).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200);

        var byPage = await workshop.RegisterAsync("diaphragm");
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", byPage, "START", Workshop.Film, "850.50", "DONE");

        Assert.Equal(await FactsAsync(byApi), await FactsAsync(byPage));
        Assert.True((await FactsAsync(byPage)).Count > 4);
    }

    [Fact]
    public async Task The_station_says_what_it_comes_to_before_it_is_closed()
    {
        var unit = await workshop.RegisterAsync("unit");
        object[] fittings =
        [
            new { position = "capsule", child = await workshop.CapsuleAsync() },
            new { position = "body", lot = Workshop.Body },
        ];
        await workshop.RecordAsync(unit, "assemble", new { fittings });
        var attempt = await workshop.OpenAsync(unit, "final-acoustic", "BENCH-1", "AN-1");
        (await workshop.PostAsync($"attempts/{attempt}/evidence?name=cardioid", Workshop.Csv(Workshop.FlatResponse))).Expect(201);
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", unit);
        Assert.DoesNotContain("As it stands", visitor.Now.Text, StringComparison.Ordinal);

        await visitor.ScanAsync("14.20");

        Assert.Contains("As it stands", visitor.Now.Text, StringComparison.Ordinal);
        Assert.Contains("<svg", visitor.Now.Html, StringComparison.Ordinal);
        Assert.Equal("open", (await workshop.GetAsync($"attempts/{attempt}")).Expect(200).Text("state"));
    }

    [Fact]
    public async Task A_scan_that_arrives_twice_is_recorded_once()
    {
        var serial = await workshop.RegisterAsync("capsule");
        (await workshop.PostAsync($"parts/{serial}/attempts", new { stage = "stack", station = "BENCH-1" })).Expect(201);
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", serial);
        var window = visitor.Now;
        for (var i = 0; i < 2; i++)
        {
            await visitor.ScanInAsync(window, Workshop.Ring, "the-same-key");
        }

        Assert.Equal(1, await CountAsync<Domain.Records.Fitting>(f => f.PartId));
        Assert.DoesNotContain("No empty slot", visitor.Now.Prompt, StringComparison.Ordinal);

        async Task<int> CountAsync<T>(System.Linq.Expressions.Expression<Func<T, Guid>> part)
            where T : class
        {
            await using var scope = workshop.Services.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<WorkshopContext>();
            var id = await db.Set<Domain.Records.Part>().Where(p => p.Serial == serial).Select(p => p.Id).SingleAsync();
            return await db.Set<T>().Select(part).CountAsync(p => p == id);
        }
    }

    [Fact]
    public async Task A_PIN_is_neither_shown_nor_kept_wherever_it_is_typed()
    {
        const string pin = "73915528";
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.GoAsync("/station");
        foreach (var typed in new[] { pin, Workshop.Builder, pin, "NO", Workshop.Builder, "abc" + pin, "NO" })
        {
            Assert.DoesNotContain(pin, (await visitor.ScanAsync(typed)).Html, StringComparison.Ordinal);
        }

        await using var scope = workshop.Services.CreateAsyncScope();
        var seats = await scope
            .ServiceProvider.GetRequiredService<WorkshopContext>()
            .Set<StationScreen>()
            .Select(s => s.Session)
            .ToListAsync();
        Assert.NotEmpty(seats);
        Assert.DoesNotContain(seats, s => s.Contains(pin, StringComparison.Ordinal));
    }

    [Fact]
    public async Task While_the_PIN_is_asked_the_box_hides_what_is_typed()
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(Workshop.Builder);
        Assert.Matches("<input id=\"scan\"[^>]*type=\"password\"", visitor.Now.Html);
        await visitor.ScanAsync(Workshop.PinOf(Workshop.Builder));
        Assert.Matches("<input id=\"scan\"[^>]*type=\"text\"", visitor.Now.Html);
    }

    [Fact]
    public async Task A_scan_that_comes_after_the_sign_in_has_ended_is_kept_until_the_PIN_is_typed()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", serial, "START", Workshop.Film);
        var token = visitor.Now.Token;
        await EndLatestSessionAsync();
        var asked = await visitor.SendAsync("/station", ("Scan", "850.50"), ("Key", "late"), ("__RequestVerificationToken", token));
        Assert.Contains("Type your PIN again", asked.Prompt, StringComparison.Ordinal);
        Assert.Contains("not recorded yet: 850.50", asked.Prompt, StringComparison.Ordinal);
        Assert.Contains(serial, asked.Text, StringComparison.Ordinal);

        await visitor.ScanAsync(Workshop.PinOf(Workshop.Builder));
        Assert.Matches("<input id=\"scan\"[^>]*value=\"850.50\"", visitor.Now.Html);
        await visitor.ScanAsync("850.50", "DONE");
        Assert.Contains("Mount passed", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.DoesNotContain("not recorded yet", visitor.Now.Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_forged_scan_does_nothing()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", serial);
        await visitor.ForgeAsync("/station", ("Scan", "START"), ("Key", "forged"));
        Assert.Equal("ready", await workshop.StateOfAsync(serial));
    }

    [Fact]
    public async Task A_refused_gate_is_said_with_its_remedy_and_writes_nothing()
    {
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", serial, "START");
        Assert.Contains("Refused", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Contains("Scan resonance-bench", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Equal("ready", await workshop.StateOfAsync(serial));
    }

    [Fact]
    public async Task A_load_is_collected_started_logged_and_closed_by_scans()
    {
        var (first, second) = (await workshop.MountAsync(), await workshop.MountAsync());
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("PLATE-1", first, second, "START");
        Assert.Contains("started for 2 parts", visitor.Now.Prompt, StringComparison.Ordinal);
        await visitor.ScanAsync(first);
        await visitor.SendFileAsync("plate-log", "log.csv", workshop.LogOfNow());
        Assert.DoesNotContain("Refused", visitor.Now.Prompt, StringComparison.Ordinal);
        await visitor.ScanAsync("LOAD-CLOSE");
        Assert.Contains("at least 60 min", visitor.Now.Text, StringComparison.Ordinal);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        await visitor.ScanAsync("LOAD-CLOSE");
        Assert.Contains("all 2 passed", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Equal("verify", (await workshop.GetAsync($"parts/{second}")).Expect(200).Text("stage"));
    }

    [Fact]
    public async Task A_second_cure_is_started_and_closed_by_scans()
    {
        const string route = """
            model: TWICE-1
            kind: diaphragm
            title: Diaphragm cured twice
            serialPrefix: TW
            author: L1
            approvedBy: Q1
            effectiveFrom: 2020-01-01
            stages:
              - {code: cure, title: Cure on the plate, method: entered-limits, loads: true, repeatable: true, minimumOpenMinutes: 60}
              - code: trim
                title: Trim
                method: entered-limits
                waits: [{afterStage: cure, minimumMinutes: 30}]
            """;
        await workshop.RouteAsync(route);
        string[] parts = [await RegisterAsync(), await RegisterAsync()];
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("PLATE-1", parts[0], parts[1], "START");
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("PLATE-1", parts[0], "LOAD-CLOSE", "CLEAR", parts[0]);
        Assert.Contains("Scan AGAIN to run Cure on the plate once more", visitor.Now.Text, StringComparison.Ordinal);

        Assert.Contains("Scan START, or more parts", (await visitor.ScanAsync("AGAIN")).Prompt, StringComparison.Ordinal);
        Assert.Contains("2 collected", (await visitor.ScanAsync(parts[1])).Prompt, StringComparison.Ordinal);
        Assert.Contains("started for 2 parts", (await visitor.ScanAsync("START")).Prompt, StringComparison.Ordinal);
        Assert.Contains("started for 2 parts", visitor.Now.Prompt, StringComparison.Ordinal);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("PLATE-1", parts[1], "LOAD-CLOSE");
        Assert.Contains("all 2 passed", visitor.Now.Prompt, StringComparison.Ordinal);
        var history = (await workshop.GetAsync($"parts/{parts[0]}/history")).Expect(200).List();
        Assert.Equal(2, history.Count(e => e.Text("what").Contains("clos", StringComparison.Ordinal)));
        Assert.Contains("Opens at", (await visitor.ScanAsync("CLEAR", parts[0])).Prompt, StringComparison.Ordinal);

        async Task<string> RegisterAsync() =>
            (await workshop.PostAsync("parts", new { kind = "diaphragm", model = "TWICE-1" })).Expect(201).Text("serial");
    }

    [Fact]
    public async Task A_bad_file_is_refused_with_the_line_that_is_wrong()
    {
        var serial = await workshop.MountAsync();
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("PLATE-1", serial, "START");
        await visitor.SendFileAsync("plate-log", "log.csv", "time,temperature_c,humidity_pct\n2026-01-01T00:00:00Z,sixty,20\n");
        Assert.Contains("Refused", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Contains("2", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Contains("missing", visitor.Now.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_bench_survives_a_reload_and_a_sign_out()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-2", serial);
        Assert.Contains(serial, (await visitor.GoAsync("/station")).Text, StringComparison.Ordinal);
        await visitor.SendAsync("/sign-out");
        Assert.Contains("Station BENCH-2", (await visitor.GoAsync("/station")).Text, StringComparison.Ordinal);
        Assert.Contains("Type your PIN again", visitor.Now.Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_no_builder_may_look_but_not_record()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(Workshop.ServiceDesk, Workshop.PinOf(Workshop.ServiceDesk), "BENCH-1", serial, "START");
        Assert.Contains("not a builder", visitor.Now.Text, StringComparison.Ordinal);
        Assert.Equal("ready", await workshop.StateOfAsync(serial));
    }

    [Fact]
    public async Task An_unknown_code_and_a_misread_one_are_told_apart()
    {
        var visitor = await SignedInByScansAsync();
        Assert.Contains("NOWHERE-1 is not known here", (await visitor.ScanAsync("NOWHERE-1")).Prompt, StringComparison.Ordinal);
        var code = PrintedCode.For(CodeKind.Part, "D26-00001");
        var misread = code.Text[..^1] + (code.Check == 'A' ? 'B' : 'A');
        Assert.Contains("misread", (await visitor.ScanAsync(misread)).Prompt, StringComparison.Ordinal);
    }

    private async Task<Visitor> SignedInByScansAsync()
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(PrintedCode.For(CodeKind.Badge, Workshop.Builder).Text, Workshop.PinOf(Workshop.Builder));
        return visitor;
    }

    private async Task EndLatestSessionAsync()
    {
        await using var scope = workshop.Services.CreateAsyncScope();
        var sessions = scope.ServiceProvider.GetRequiredService<WorkshopContext>().Set<SignInSession>();
        var latest = await sessions.MaxAsync(s => s.StartedAt);
        await sessions.Where(s => s.StartedAt == latest).ExecuteDeleteAsync();
    }

    /// <summary>What the history says happened, without ids, times and serials.</summary>
    private async Task<IReadOnlyList<string>> FactsAsync(string serial)
    {
        var history = (await workshop.GetAsync($"parts/{serial}/history")).Expect(200);
        return
        [
            .. history
                .List()
                .Select(f =>
                    System.Text.RegularExpressions.Regex.Replace(
                        f.ToString().Replace(serial, "SERIAL", StringComparison.Ordinal),
                        "\"[0-9a-f]{8}-[0-9a-f-]{27}\"|\"\\d{4}-\\d\\d-\\d\\dT[^\"]*\"",
                        "\"...\""
                    )
                ),
        ];
    }
}
