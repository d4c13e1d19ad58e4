namespace Traceability.Web.Tests.Pages;

/// <summary>
/// The use cases of the bench once by API and once by page, the same facts stored. Those of the desk stand with their pages: see the tests
/// named "by_page_store(s)_the_same_facts_as_by_API" beside this one.
/// </summary>
public sealed class BothDoorsTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_part_registered_by_page_stores_the_same_facts_as_by_API()
    {
        (
            await workshop.PostAsync(
                "parts",
                new
                {
                    kind = "diaphragm",
                    model = Workshop.Model,
                    serial = "TWIN-1",
                    carrier = "TIN-1",
                }
            )
        ).Expect(201);
        var visitor = await Visitor.SignedInAsync(workshop);
        await visitor.GoAsync("/parts/new");
        await visitor.SendAsync(
            "/parts/new",
            ("What", $"{Workshop.Model}/diaphragm"),
            ("Serial", "TWIN-2"),
            ("Carrier", "TIN-2"),
            ("Key", visitor.Now.Field("Key"))
        );

        var byApi = (await workshop.LastAsync("TWIN-1")).Replace("TIN-1", "TIN", StringComparison.Ordinal);
        Assert.Equal(byApi, (await workshop.LastAsync("TWIN-2")).Replace("TIN-2", "TIN", StringComparison.Ordinal));
        Assert.Contains("carrierPlacement", byApi, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task An_attempt_opened_and_abandoned_by_scans_stores_the_same_facts_as_by_API()
    {
        var byApi = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(byApi, "mount");
        (await workshop.PostAsync($"attempts/{attempt}/abandon", new { reason = "called away" })).Expect(200);

        var byPage = await workshop.RegisterAsync("diaphragm");
        await (await AtStationAsync("BENCH-1")).ScanAsync(byPage, "START", "ABANDON", "called away");

        await SameFactsAsync(byApi, byPage, 3);
    }

    [Fact]
    public async Task A_file_attached_at_the_station_stores_the_same_facts_as_by_API()
    {
        var (byApi, byPage) = (await AssembledAsync(), await AssembledAsync());
        var attempt = await workshop.OpenAsync(byApi, "final-acoustic", "BENCH-1", "AN-1");
        (await workshop.PostAsync($"attempts/{attempt}/evidence?name=cardioid", Workshop.Csv(Workshop.FlatResponse))).Expect(201);

        var visitor = await AtStationAsync("BENCH-1");
        await visitor.ScanAsync(byPage, "AN-1", "START");
        await visitor.SendFileAsync("cardioid", "response.csv", Workshop.FlatResponse);

        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));
        Assert.Contains("attach-evidence", await workshop.LastAsync(byPage), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_load_run_by_scans_stores_the_same_facts_as_by_API()
    {
        var (byApi, byPage) = (await workshop.MountAsync(), await workshop.MountAsync());
        var log = workshop.LogOfNow();
        var load = (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { byApi },
                }
            )
        ).Expect(201).Id();
        (await workshop.PostAsync($"loads/{load}/log?name=plate-log", Workshop.Csv(log))).Expect(201);

        var visitor = await AtStationAsync("PLATE-1");
        await visitor.ScanAsync(byPage, "LOAD-START", byPage);
        await visitor.SendFileAsync("plate-log", "log.csv", log);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        (await workshop.PostAsync($"loads/{load}/close", new { })).Expect(200);
        await visitor.ScanAsync("LOAD-CLOSE");

        await SameFactsAsync(byApi, byPage, 6);
        Assert.Equal("verify", (await workshop.GetAsync($"parts/{byPage}")).Expect(200).Text("stage"));
    }

    private async Task<string> AssembledAsync()
    {
        var unit = await workshop.RegisterAsync("unit");
        object[] fittings =
        [
            new { position = "capsule", child = await workshop.CapsuleAsync() },
            new { position = "body", lot = Workshop.Body },
        ];
        await workshop.RecordAsync(unit, "assemble", new { fittings });
        return unit;
    }

    private async Task<Visitor> AtStationAsync(string station)
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(Workshop.Builder, Workshop.PinOf(Workshop.Builder), station);
        return visitor;
    }

    private async Task SameFactsAsync(string byApi, string byPage, int atLeast)
    {
        var (expected, found) = (await FactsAsync(byApi), await FactsAsync(byPage));
        Assert.Equal(expected, found);
        Assert.True(found.Count >= atLeast, $"{found.Count} facts");
    }

    private async Task<IReadOnlyList<string>> FactsAsync(string serial)
    {
        var history = (await workshop.GetAsync($"parts/{serial}/history?limit=500")).Expect(200);
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
