namespace Traceability.Web.Tests.Setup;

/// <summary>
/// What is retired is kept and no longer offered; what was entered by mistake is seen nowhere, and only as long as nothing depends on it.
/// </summary>
public sealed class TakingBackTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_retired_station_is_no_longer_offered_and_takes_no_new_work_until_it_is_taken_into_use_again()
    {
        await StationAsync("OLD-1");
        var part = await PartAsync();
        (await DecideAsync("stations/OLD-1/retirement", "sold")).Expect(200);
        Assert.DoesNotContain("OLD-1", await CodesAsync("stations"));
        Assert.Contains("OLD-1", await CodesAsync("stations?retired=true"));
        var refused = (await OpenAsync(part, "OLD-1", "RB-1")).Problem(409);
        Assert.Contains("retired: sold", refused, StringComparison.Ordinal);
        (await DecideAsync("stations/OLD-1/reinstatement", "bought back")).Expect(200);
        (await OpenAsync(part, "OLD-1", "RB-1")).Expect(201);
    }

    [Fact]
    public async Task A_misspelt_station_is_taken_back_and_known_no_more()
    {
        await StationAsync("BENHC-9");
        (await DecideAsync("stations/BENHC-9/mistake", "misspelt")).Expect(200);
        Assert.DoesNotContain("BENHC-9", await CodesAsync("stations?retired=true"));
        (await OpenAsync(await PartAsync(), "BENHC-9", "RB-1")).Expect(400);
        var again = (await workshop.PostAsync("stations", new { code = "BENHC-9", title = "again" }, Workshop.Lead)).Problem(409);
        Assert.Contains("misspelt", again, StringComparison.Ordinal);
        Assert.Contains(
            "entered by mistake",
            (await DecideAsync("stations/BENHC-9/mistake", "twice")).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_something_depends_on_cannot_be_taken_back_and_the_refusal_names_what_depends()
    {
        var part = await PartAsync();
        (await OpenAsync(part, "BENCH-1", "RB-1")).Expect(201);
        Assert.Contains(part, (await DecideAsync("stations/BENCH-1/mistake", "no")).Problem(409), StringComparison.Ordinal);
        Assert.Contains(part, (await DecideAsync("instruments/RB-1/mistake", "no")).Problem(409), StringComparison.Ordinal);
        Assert.Contains(part, (await DecideAsync($"models/{Workshop.Model}/mistake", "no")).Problem(409), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_retired_instrument_is_refused_where_a_stage_is_opened_and_a_retired_lot_where_it_is_fitted()
    {
        await InstrumentAsync("RB-7");
        (await DecideAsync("instruments/RB-7/retirement", "worn out")).Expect(200);
        Assert.DoesNotContain("RB-7", await CodesAsync("instruments"));
        var part = await PartAsync();
        Assert.Contains("RB-7 is retired: worn out", (await OpenAsync(part, "BENCH-1", "RB-7")).Body, StringComparison.Ordinal);

        await WorkshopSetUp.LotAsync(workshop, "F-OLD", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        (await DecideAsync("lots/F-OLD/retirement", "used up")).Expect(200);
        Assert.DoesNotContain("F-OLD", (await workshop.GetAsync("lots?kind=film")).Expect(200).List().Select(l => l.Text("number")));
        var attempt = (await OpenAsync(part, "BENCH-1", "RB-1")).Expect(201).Text("id");
        var refused = await workshop.PostAsync(
            $"attempts/{attempt}/fittings",
            new
            {
                position = "film",
                lot = "F-OLD",
                quantity = 0.1,
            }
        );
        Assert.Contains("retired: used up", refused.Body, StringComparison.Ordinal);
        refused.Expect(409);
    }

    [Fact]
    public async Task A_retired_model_starts_no_new_parts_and_a_retired_carrier_takes_none()
    {
        var lead = await Pages.DeskClient.SignInAsync(workshop, Workshop.Lead);
        (await lead.SendAsync("/setup/carriers", "add", ("code", "JIG-90"), ("kind", "jig"), ("count", "3"))).Expect(200);
        Assert.Contains("JIG-92", await CodesAsync("carriers"));
        (await DecideAsync("carriers/JIG-91/retirement", "bent")).Expect(200);
        Assert.Contains("bent", (await RegisterAsync("JIG-91")).Problem(409), StringComparison.Ordinal);
        (await RegisterAsync("JIG-92")).Expect(201);
        (await DecideAsync($"models/{Workshop.Model}/retirement", "no longer built")).Expect(200);
        Assert.Contains("no longer built", (await RegisterAsync(null)).Problem(409), StringComparison.Ordinal);
        Assert.DoesNotContain((await workshop.GetAsync("routes")).Expect(200).List(), r => r.Text("model") == Workshop.Model);
        (await DecideAsync($"models/{Workshop.Model}/reinstatement", "built again")).Expect(200);
        (await RegisterAsync(null)).Expect(201);
    }

    [Fact]
    public async Task A_corrected_name_is_shown_and_the_one_of_before_stays_in_the_history()
    {
        await StationAsync("PLATE-9");
        (await workshop.PostAsync("stations/PLATE-9/name", new { name = "Warm plate", reason = "misspelt" }, Workshop.Lead)).Expect(200);
        var listed = (await workshop.GetAsync("stations")).Expect(200).List().Single(s => s.Text("code") == "PLATE-9");
        Assert.Equal("Warm plate", listed.Text("title"));
        (
            await workshop.PostAsync($"people/{Workshop.Builder}/name", new { name = "Bea Bilder", reason = "married" }, Workshop.Lead)
        ).Expect(200);
        Assert.Equal(
            "Bea Bilder",
            (await workshop.GetAsync("people")).Expect(200).List().Single(p => p.Text("badge") == Workshop.Builder).Text("name")
        );
    }

    [Fact]
    public async Task Only_lead_and_quality_take_back_and_a_reason_is_needed()
    {
        (await workshop.PostAsync("stations/BENCH-2/retirement", new { reason = "no" }, Workshop.Builder)).Expect(403);
        (await DecideAsync("stations/BENCH-2/retirement", " ")).Expect(400);
        (await DecideAsync("stations/NONE-1/retirement", "no")).Expect(404);
    }

    private Task<Reply> DecideAsync(string path, string reason) => workshop.PostAsync(path, new { reason }, Workshop.Lead);

    private async Task<IReadOnlyList<string>> CodesAsync(string path) =>
        [.. (await workshop.GetAsync(path)).Expect(200).List().Select(x => x.Text("code"))];

    private async Task StationAsync(string code) =>
        (await workshop.PostAsync("stations", new { code, title = $"Station {code}" }, Workshop.Lead)).Expect(201);

    private async Task InstrumentAsync(string code)
    {
        (
            await workshop.PostAsync(
                "instruments",
                new
                {
                    code,
                    kind = "resonance-bench",
                    title = code,
                },
                Workshop.Lead
            )
        ).Expect(201);
        var today = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime);
        var calibration = new
        {
            calibratedOn = today.AddDays(-10),
            dueOn = today.AddDays(300),
            reference = "C-1",
        };
        (await workshop.PostAsync($"instruments/{code}/calibrations", calibration, Workshop.Quality)).Expect(201);
    }

    private Task<Reply> RegisterAsync(string? carrier) =>
        workshop.PostAsync(
            "parts",
            new
            {
                kind = "diaphragm",
                model = Workshop.Model,
                carrier,
            }
        );

    private async Task<string> PartAsync() => (await RegisterAsync(null)).Expect(201).Text("serial");

    private Task<Reply> OpenAsync(string serial, string station, string instrument) =>
        workshop.PostAsync(
            $"parts/{serial}/attempts",
            new
            {
                stage = "mount",
                station,
                instruments = new[] { instrument },
            }
        );
}
