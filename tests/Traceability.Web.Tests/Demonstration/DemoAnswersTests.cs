using Traceability.Web.Tests.Contract;

namespace Traceability.Web.Tests.Demonstration;

/// <summary>The answers about four months of work keep to the OpenAPI document too: there the rare members have values.</summary>
[Collection(InDemoWorkshop.Name)]
public sealed class DemoAnswersTests(DemoWorkshop demo)
{
    [Fact]
    public async Task What_the_demonstration_answers_is_what_the_document_says()
    {
        var shapes = new DocumentedShapes(await demo.GetAsync("../../openapi/v1.json"));
        var wrong = new List<string>();
        foreach (var (path, address) in await AddressesAsync())
        {
            wrong.AddRange(shapes.Contradictions("/api/v1/" + path, await demo.GetAsync(address)).Take(5).Select(c => $"{address} {c}"));
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private async Task<IReadOnlyList<(string Path, string Address)>> AddressesAsync()
    {
        var shipped = (await demo.SerialsAsync("kind=unit&state=shipped"))[0];
        var returned = (await demo.GetAsync("returns")).List();
        var attempts = (await demo.GetAsync($"parts/{shipped}/history"))
            .List()
            .Where(h => h.Has("attempt"))
            .Select(h => h.Text("attempt"))
            .Distinct();
        List<string> parts =
        [
            shipped,
            returned[0].Text("serial"),
            .. (await demo.SerialsAsync("kind=capsule&free=true")).Take(1),
            .. (await demo.SerialsAsync("kind=diaphragm")).Take(2),
            "F-2603",
        ];
        return
        [
            .. new[]
            {
                "routes",
                "people",
                "instruments",
                "holds",
                "returns",
                "quality/film-lots",
                "quality/pareto",
                "quality/yield",
                "quality/notices",
            }.Select(p => (p, p)),
            ("parts", "parts?limit=300"),
            ("lots", "lots?limit=500"),
            ("nonconformities", "nonconformities?limit=300"),
            ("lots/{number}/where-used", "lots/F-2603/where-used"),
            .. parts.SelectMany(p => new[] { "", "/gates", "/history", "/made-of" }.Select(w => ("parts/{serial}" + w, $"parts/{p}{w}"))),
            .. attempts.Select(a => ("attempts/{id}", $"attempts/{a}")),
            ("parts/{serial}/certificates/{revision}.json", $"parts/{shipped}/certificates/1.json"),
            ("quality/film-lots/{number}/parts", "quality/film-lots/F-2603/parts"),
            ("quality/causes", "quality/causes?stage=insulation"),
            ("quality/causes", "quality/causes?stage=ring-resonance&characteristic=driftPct"),
            ("quality/control-chart", "quality/control-chart?stage=ring-resonance&characteristic=driftPct&by=load"),
            ("quality/trace", "quality/trace?what=lot&code=F-2603"),
            ("quality/monthly-report.json", $"quality/monthly-report.json?month={demo.Today.AddMonths(-1):yyyy-MM}"),
        ];
    }
}
