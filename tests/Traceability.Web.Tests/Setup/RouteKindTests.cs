using System.Text;
using System.Text.Json;
using Traceability.Web.Tests.Pages;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Setup;

/// <summary>A route names kinds of lots, parts and instruments; only the workshop knows whether it has any of them.</summary>
public sealed class RouteKindTests(Workshop w) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Loading_a_route_names_the_kinds_that_the_workshop_has_nothing_of_line_by_line()
    {
        var warnings = (await ProposeAsync(Text("misspelt", "adhesiv", "diafragm", "resonance-bensch")))
            .List("warnings")
            .Select(x => (x.At("line").GetInt32(), x.Text("message")))
            .ToList();
        Assert.Equal([2, 11, 14, 15], warnings.Select(x => x.Item1));
        Assert.StartsWith(
            "'misspelt' is a kind of part that nothing here knows yet: a new one, or is it misspelt?",
            warnings[0].Item2,
            StringComparison.Ordinal
        );
        Assert.StartsWith("no instrument of the kind 'resonance-bensch' is registered", warnings[1].Item2, StringComparison.Ordinal);
        Assert.Contains("acoustic-analyser, ", warnings[1].Item2, StringComparison.Ordinal);
        Assert.StartsWith("no lot of the kind 'adhesiv' was ever received here", warnings[2].Item2, StringComparison.Ordinal);
        Assert.StartsWith("no route makes a part of the kind 'diafragm'", warnings[3].Item2, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_route_whose_kinds_are_known_loads_without_a_word() =>
        Assert.Empty(
            (await ProposeAsync(Text("capsule", "insulating-ring", "diaphragm", "resonance-bench", model: "KNOWN-1"))).List("warnings")
        );

    [Fact]
    public async Task It_is_approved_when_the_first_of_each_kind_is_there()
    {
        await ProposeAsync(Text("tray-kinds", "mica-disc", "diaphragm", "depth-gauge"));
        await using var door = BackDoor.Of(w);
        await door.UntouchedByAsync(async () =>
        {
            var refused = (await ApproveAsync("tray-kinds")).Problem(409);
            Assert.Contains("Line 11: no instrument of the kind 'depth-gauge'", refused, StringComparison.Ordinal);
            Assert.Contains("Line 14: no lot of the kind 'mica-disc'", refused, StringComparison.Ordinal);
        });
        var page = await (await DeskClient.SignInAsync(w, Workshop.Quality)).GetAsync("/setup/routes/TEST-1/tray-kinds/1");
        Assert.Contains("It cannot be approved yet", page.Words, StringComparison.Ordinal);
        Assert.Contains("Line 14: no lot of the kind 'mica-disc'", page.Words, StringComparison.Ordinal);

        await WorkshopSetUp.LotAsync(w, "MICA-1", "mica-disc");
        (
            await w.PostAsync(
                "instruments",
                new
                {
                    code = "DG-1",
                    kind = "depth-gauge",
                    title = "Depth gauge",
                },
                Workshop.Lead
            )
        ).Expect(201);
        (await ApproveAsync("tray-kinds")).Expect(201);
    }

    [Fact]
    public async Task A_route_that_was_kept_elsewhere_begins_with_its_own_revision_and_goes_on_from_there()
    {
        const string Known = "revision: 1";
        var text = Text("capsule", "insulating-ring", "diaphragm", "resonance-bench", model: "KEPT-1");
        Assert.Equal(7, (await ProposeAsync(text.Replace(Known, "revision: 7", StringComparison.Ordinal))).At("revision").GetInt32());

        var next = Yaml(text.Replace(Known, "revision: 9", StringComparison.Ordinal));
        Assert.Contains("8", (await w.PostAsync("routes", next, Workshop.Lead)).Problem(409), StringComparison.Ordinal);
        Assert.Equal(8, (await ProposeAsync(text.Replace(Known, "revision: 8", StringComparison.Ordinal))).At("revision").GetInt32());
    }

    private static string Text(string kind, string lotKind, string partKind, string instrumentKind, string model = "TEST-1") =>
        $"model: {model}\nkind: {kind}\nrevision: 1\ntitle: Tray\nserialPrefix: {model[..2]}\nauthor: L1\neffectiveFrom: 2020-01-01\n"
        + $"stages:\n  - code: look\n    title: Look\n    instrumentKinds: [{instrumentKind}]\n    method: entered-limits\n    slots:\n"
        + $"      - {{position: bond, lotKind: {lotKind}}}\n      - {{position: part, partKind: {partKind}}}\n";

    private static StringContent Yaml(string text) => new(text, Encoding.UTF8, "text/yaml");

    private async Task<JsonElement> ProposeAsync(string text) => (await w.PostAsync("routes", Yaml(text), Workshop.Lead)).Expect(201);

    private Task<Reply> ApproveAsync(string kind) =>
        w.PostAsync($"routes/TEST-1/{kind}/1/approval", new { reason = "tried", pin = Workshop.PinOf(Workshop.Quality) }, Workshop.Quality);
}
