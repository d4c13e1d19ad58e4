using System.Globalization;
using System.Text.Json;

namespace Traceability.Web.Tests.Http;

/// <summary>Lists: in pages and as tables, the same of both; and nothing is left out in silence.</summary>
public sealed class ListTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string[] Lists =
    [
        "parts",
        "stations",
        "people",
        "routes/revisions",
        "lots",
        "instruments",
        "nonconformities",
        "holds",
        "returns",
        "quality/concessions",
        "quality/gauge-studies",
        "quality/film-lots",
        "quality/pareto",
        "quality/yield",
        "quality/notices",
        "quality/film-lots/FILM-1/parts",
        "quality/causes?stage=mount",
        "quality/causes/parts?stage=mount",
        "lots/FILM-1/where-used",
        "instruments/RB-1/affected",
        "quality/trace?what=lot&code=FILM-1",
        "quality/trace/holds?what=lot&code=FILM-1",
        "search?q=D",
        "ledger/FILM-1",
        "routes",
    ];

    public static TheoryData<string> All => [.. Lists];

    [Theory]
    [MemberData(nameof(All))]
    public async Task Every_list_takes_a_limit_and_goes_on_where_it_was_cut(string list)
    {
        await SomeAsync();
        var whole = (await workshop.GetAsync(With(list, "limit=500"))).Expect(200).List();
        List<string> pages = [];
        string? next = null;
        do
        {
            var page = (await workshop.GetAsync(With(list, "limit=1") + (next is null ? "" : $"&cursor={next}"))).Expect(200);
            Assert.True(page.List().Count <= 1);
            pages.AddRange(page.List().Select(i => i.GetRawText()));
            next = page.Has("next") ? page.Text("next") : null;
        } while (next is not null && pages.Count < 600);
        Assert.Equal(whole.Count, pages.Count);
        (await workshop.GetAsync(With(list, "limit=501"))).Expect(400);
        (await workshop.GetAsync(With(list, "cursor=zz"))).Expect(400);
    }

    [Fact]
    public async Task Every_list_whose_answer_has_a_next_is_among_them()
    {
        var document = (await workshop.GetAsync("/openapi/v1.json", null)).Expect(200);
        var limited = document
            .At("paths")
            .EnumerateObject()
            .Where(p =>
                p.Value.Has("get")
                && p.Value.At("get").Has("parameters")
                && p.Value.At("get").List("parameters").Any(x => x.Text("name") == "limit")
            )
            .Select(p => p.Name);
        var listed = document
            .At("paths")
            .EnumerateObject()
            .Where(p => p.Value.Has("get") && AnswersNext(document, p.Value.At("get")))
            .Select(p => p.Name);
        Assert.Equal(listed.Order(StringComparer.Ordinal), limited.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("parts/{0}/history")]
    [InlineData("parts")]
    [InlineData("holds")]
    [InlineData("lots")]
    [InlineData("returns")]
    [InlineData("quality/film-lots")]
    [InlineData("quality/yield")]
    [InlineData("quality/causes/parts?stage=mount")]
    [InlineData("parts/{0}/gates")]
    public async Task A_table_has_every_value_that_the_JSON_has(string list)
    {
        await SomeAsync();
        var address = string.Format(CultureInfo.InvariantCulture, list, await workshop.MountAsync());
        var columns = (await AcceptingAsync(address, "text/csv")).Body.Split("\r\n")[0].Split(',').ToHashSet();
        var items = (await workshop.GetAsync(With(address, "limit=500"))).Expect(200).List();
        Assert.NotEmpty(items);
        Assert.DoesNotContain(
            items.SelectMany(i => Leaves(i, "")).Distinct(),
            leaf => !columns.Contains(leaf) && !columns.Any(c => c.StartsWith(leaf + ".", StringComparison.Ordinal))
        );
    }

    [Fact]
    public async Task A_table_comes_whole_without_a_limit_and_in_parts_with_one()
    {
        for (var i = 0; i < 55; i++)
        {
            (await workshop.PostAsync("stations", new { code = $"ROW-{i:00}", title = "one of many" }, Workshop.Lead)).Expect(201);
            (
                await workshop.PostAsync(
                    "lots",
                    new
                    {
                        number = $"ROW-{i:00}",
                        kind = "screw",
                        supplier = "Invented",
                        supplierLot = "S",
                        quantity = 1,
                        unit = "pcs",
                    },
                    Workshop.Quality
                )
            ).Expect(201);
        }

        Assert.True(LinesOf(await AcceptingAsync("lots", "text/csv")) > 55);
        Assert.Equal(50, (await workshop.GetAsync("lots")).Expect(200).List().Count);
        Assert.Equal(11, LinesOf(await AcceptingAsync("lots?limit=10", "text/csv")));
        var next = (await workshop.GetAsync("lots?limit=10")).Expect(200).Text("next");
        Assert.Equal(6, LinesOf(await AcceptingAsync($"lots?limit=5&cursor={next}", "text/csv")));
        Assert.Equal(11, LinesOf(await AcceptingAsync("stations?limit=10", "text/csv")));
    }

    [Fact]
    public async Task A_history_comes_whole_without_a_limit_and_in_parts_with_one()
    {
        var serial = await workshop.MountAsync();
        var whole = (await workshop.GetAsync($"parts/{serial}/history")).Expect(200);
        Assert.False(whole.Has("next"));

        var first = (await workshop.GetAsync($"parts/{serial}/history?limit=2")).Expect(200);
        var rest = (await workshop.GetAsync($"parts/{serial}/history?limit=500&cursor={first.Text("next")}")).Expect(200);
        Assert.Equal(whole.List().Select(e => e.Id()), first.List().Concat(rest.List()).Select(e => e.Id()));
    }

    [Theory]
    [InlineData("application/json, text/csv;q=0.1", false)]
    [InlineData("text/csv;q=0.5, application/json;q=0.4", true)]
    [InlineData("text/csv", true)]
    [InlineData("text/csv, */*;q=0.1", true)]
    [InlineData("*/*", false)]
    [InlineData("text/csv;q=0, */*", false)]
    [InlineData("application/json, text/csv", false)]
    [InlineData("text/csv, application/json", true)]
    [InlineData("text/*", true)]
    public async Task The_weights_of_what_is_accepted_decide(string accept, bool csv) =>
        Assert.Equal(csv, (await AcceptingAsync("stations", accept)).Json.ValueKind == JsonValueKind.Undefined);

    [Theory]
    [InlineData("parts?kind=zzz", "kind")]
    [InlineData("parts?model=zzz", "model")]
    [InlineData("parts?state=zzz", "state")]
    [InlineData("lots?kind=zzz", "kind")]
    [InlineData("lots?state=zzz", "state")]
    [InlineData("routes/revisions?kind=zzz", "kind")]
    [InlineData("routes/revisions?model=zzz", "model")]
    [InlineData("quality/control-chart?stage=mount&characteristic=coarseHz&lots=zzz", "lots")]
    public async Task A_word_that_nothing_here_has_is_refused(string address, string field) =>
        Assert.True((await workshop.GetAsync(address)).Expect(400).At("errors").Has(field));

    [Theory]
    [InlineData("parts?kind=board-set")]
    [InlineData("lots?kind=film")]
    [InlineData("lots?kind=insulating-ring")]
    public async Task A_kind_of_which_there_is_nothing_yet_is_no_mistake(string address) => (await workshop.GetAsync(address)).Expect(200);

    private static bool AnswersNext(JsonElement document, JsonElement get)
    {
        if (!get.At("responses").TryGetProperty("200", out var good) || !good.TryGetProperty("content", out var content))
        {
            return false;
        }

        if (!content.TryGetProperty("application/json", out var json))
        {
            return false;
        }

        var schema = json.At("schema");
        var shape = schema.TryGetProperty("$ref", out var reference)
            ? document.At("components.schemas").GetProperty(reference.GetString()!.Split('/')[^1])
            : schema;
        return shape.TryGetProperty("properties", out var members) && members.Has("next");
    }

    private static IEnumerable<string> Leaves(JsonElement json, string before) =>
        json.ValueKind == JsonValueKind.Object
            ? json.EnumerateObject()
                .SelectMany(m => m.Value.ValueKind == JsonValueKind.Object ? Leaves(m.Value, before + m.Name + ".") : [before + m.Name])
            : [];

    private static int LinesOf(Reply table) => table.Body.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length;

    private static string With(string address, string query) =>
        address + (address.Contains('?', StringComparison.Ordinal) ? "&" : "?") + query;

    private async Task<Reply> AcceptingAsync(string address, string accept)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/api/v1/{address}");
        request.Headers.Add("Accept", accept);
        var reply = await workshop.SendAsync(request, Workshop.Quality);
        Assert.Equal(System.Net.HttpStatusCode.OK, reply.Status);
        return reply;
    }

    /// <summary>Two of what the lists are about, once for all tests of the class.</summary>
    private async Task SomeAsync()
    {
        if ((await workshop.GetAsync("returns")).Expect(200).List().Count > 0)
        {
            return;
        }

        for (var i = 0; i < 2; i++)
        {
            var unit = await workshop.UnitAsync();
            (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
            (await workshop.PostAsync($"parts/{unit}/shipments", new { }, Workshop.Quality)).Expect(201);
            var back = (await workshop.PostAsync("returns", new { serial = unit, complaint = "crackles" }, Workshop.ServiceDesk))
                .Expect(201)
                .Id();
            (
                await workshop.PostAsync(
                    $"returns/{back}/findings",
                    new { code = "flux-on-ring", description = "flux" },
                    Workshop.ServiceDesk
                )
            ).Expect(201);
            (await workshop.PostAsync("holds", new { part = await workshop.MountAsync(), reason = "looks odd" }, Workshop.Quality)).Expect(
                201
            );
        }
    }
}
