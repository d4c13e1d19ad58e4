using System.Text.Json;
using Traceability.Web.Tests.Quality;

namespace Traceability.Web.Tests.Setup;

/// <summary>A workshop of one: a second sign-in with a reason in the place of a second person, said on record and certificate.</summary>
public sealed class SingleHandedTests : IAsyncLifetime
{
    private const string Because = "nobody else works here";

    /// <summary>One person with every role that the work asks for.</summary>
    private const string Solo = Workshop.Importer;

    private readonly Workshop workshop = new();

    public Task InitializeAsync() => workshop.InitializeAsync();

    public Task DisposeAsync() => workshop.DisposeAsync();

    [Fact]
    public async Task It_is_turned_on_with_a_reason_only()
    {
        var body = OwnWorkshop.Body();
        body["singleHanded"] = true;
        Assert.Contains("say why", (await workshop.PostAsync("workshop", body, Workshop.Lead)).Problem(400), StringComparison.Ordinal);
        await TurnOnAsync();
        Assert.True((await workshop.GetAsync("workshop")).Expect(200).At("singleHanded").GetBoolean());
    }

    [Fact]
    public async Task Who_built_concedes_only_where_the_workshop_works_single_handed_and_with_a_reason()
    {
        var raised = await RaisedBySoloAsync();
        (await ConcedeAsync(raised, Because)).Problem(403);
        await TurnOnAsync();
        var asked = (await ConcedeAsync(raised, null)).Expect(400);
        Assert.Contains("what two should", asked.At("errors").GetProperty("aloneBecause")[0].GetString(), StringComparison.Ordinal);
        (await ConcedeAsync(raised, Because)).Expect(201);
    }

    [Fact]
    public async Task A_unit_made_by_one_person_says_so_in_its_history_and_on_its_certificate()
    {
        await TurnOnAsync();
        var unit = await workshop.RegisterAsync("unit");
        object[] fittings =
        [
            new { position = "capsule", child = await workshop.CapsuleAsync() },
            new { position = "body", lot = Workshop.Body },
        ];
        await workshop.RecordAsync(unit, "assemble", new { fittings }, Solo);
        await workshop.RecordAsync(unit, "final-acoustic", Tested, Solo);
        var closed = (await InspectAsync(unit)).Problem(409);
        Assert.Contains("Ida Importer did Assembly", closed, StringComparison.Ordinal);
        (await SignAsync(unit, "0000")).Problem(403);
        (await SignAsync(unit, Workshop.PinOf(Solo))).Expect(201);
        (await InspectAsync(unit)).Expect(201);

        var history = (await workshop.GetAsync($"parts/{unit}/history?limit=500")).Expect(200).List();
        var signed = Assert.Single(history, h => h.Text("what") == "second-sign-in");
        Assert.Contains(Because, signed.Text("words"), StringComparison.Ordinal);

        await workshop.IssueAsync(unit);
        var twin = JsonSerializer.Deserialize<JsonElement>(await workshop.BytesAsync($"parts/{unit}/certificates/1.json"));
        var said = Assert.Single(twin.List("statements"), s => s.Text("term") == "Single-handed work").Text("text");
        Assert.Contains("Final inspection and release was done by the person whose work it looks at", said, StringComparison.Ordinal);
        Assert.Contains(Because, said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_author_of_a_route_approves_it_where_the_workshop_works_single_handed()
    {
        var text = (await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "Routes", "unit.yaml")))
            .Replace("model: TEST-1", "model: SOLO-1", StringComparison.Ordinal)
            .Replace("serialPrefix: U", "serialPrefix: S", StringComparison.Ordinal);
        (await workshop.PostAsync("routes", new StringContent(text, System.Text.Encoding.UTF8, "text/yaml"), Workshop.Lead)).Expect(201);
        (await ApproveAsync(Because)).Problem(409);
        await TurnOnAsync();
        (await ApproveAsync(null)).Problem(400);
        (await ApproveAsync(Because)).Expect(201);
    }

    private static object Tested =>
        new
        {
            instruments = new[] { "AN-1" },
            readings = new[] { new { characteristic = "sensitivityCardioidMvPa", value = "14.20" } },
            evidence = new[]
            {
                new
                {
                    name = "cardioid",
                    mediaType = "text/csv",
                    text = Workshop.FlatResponse,
                },
            },
        };

    private Task<Reply> InspectAsync(string unit) =>
        workshop.PostAsync(
            $"parts/{unit}/records",
            new
            {
                stage = "inspection",
                station = "BENCH-1",
                readings = new[] { new { characteristic = "surfaceFaults", value = 0 } },
            },
            Solo
        );

    private Task<Reply> SignAsync(string unit, string pin) =>
        workshop.PostAsync(
            $"parts/{unit}/second-sign-ins",
            new
            {
                stage = "inspection",
                aloneBecause = Because,
                pin,
            },
            Solo
        );

    private Task<Reply> ApproveAsync(string? because) =>
        workshop.PostAsync(
            "routes/SOLO-1/unit/1/approval",
            new
            {
                reason = "tried",
                pin = Workshop.PinOf(Workshop.Lead),
                aloneBecause = because,
            },
            Workshop.Lead
        );

    private async Task<Guid> RaisedBySoloAsync()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await workshop.RecordAsync(
            serial,
            "mount",
            new
            {
                readings = new[] { new { characteristic = "coarseHz", value = 850 } },
                fittings = new[] { new { position = "film", lot = Workshop.Film } },
            },
            Solo
        );
        var raised = new { code = "scratched-film", description = "a scratch" };
        return (await workshop.PostAsync($"parts/{serial}/nonconformities", raised, Solo)).Expect(201).Id();
    }

    private Task<Reply> ConcedeAsync(Guid id, string? because) =>
        workshop.PostAsync(
            $"nonconformities/{id}/disposition",
            new
            {
                kind = "concession",
                reason = "not seen from outside",
                pin = Workshop.PinOf(Solo),
                aloneBecause = because,
            },
            Solo
        );

    private async Task TurnOnAsync()
    {
        var body = OwnWorkshop.Body();
        (body["singleHanded"], body["reason"]) = (true, "one person works here");
        (await workshop.PostAsync("workshop", body, Workshop.Lead)).Expect(201);
    }
}
