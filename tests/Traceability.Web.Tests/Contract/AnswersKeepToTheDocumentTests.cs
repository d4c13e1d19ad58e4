using System.Text.Json;

namespace Traceability.Web.Tests.Contract;

/// <summary>Every GET of the OpenAPI document answers what its schema says, asked of a workshop that has some of everything.</summary>
public sealed class AnswersKeepToTheDocumentTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string Pin = Workshop.PinOf(Workshop.Quality);

    [Fact]
    public async Task Every_get_answers_what_its_schema_says()
    {
        var shapes = new DocumentedShapes((await workshop.GetAsync("/openapi/v1.json", null)).Expect(200));
        var wrong = new List<string>();
        var asked = new HashSet<string>();
        var named = await AddressesAsync();
        // What needs no part, lot or question is asked as the document names it: a new list needs no line here.
        var plain = shapes.Gets.Where(p => !p.Contains('{', StringComparison.Ordinal) && named.All(n => n.Path != p)).Select(p => (p, p));
        foreach (var (path, address) in named.Concat(plain))
        {
            var badge = path.EndsWith("/tokens", StringComparison.Ordinal) ? Workshop.Lead : Workshop.Quality;
            wrong.AddRange(
                shapes.Contradictions(path, (await workshop.GetAsync(address, badge)).Expect(200)).Take(5).Select(c => $"{address} {c}")
            );
            asked.Add(path);
        }

        Assert.Equal([], shapes.Gets.Except(asked));
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public async Task Every_problem_keeps_to_its_schema()
    {
        var shapes = new DocumentedShapes((await workshop.GetAsync("/openapi/v1.json", null)).Expect(200));
        var serial = await workshop.RegisterAsync("diaphragm");
        Assert.Equal(
            [],
            shapes.OfProblem(
                (await workshop.PostAsync($"parts/{serial}/attempts", new { stage = "cure", station = "PLATE-1" })).Expect(409)
            )
        );
        Assert.Equal(
            [],
            shapes.OfProblem((await workshop.PostAsync("holds", new { part = serial, reason = "" }, Workshop.Quality)).Expect(400))
        );
        Assert.Equal([], shapes.OfProblem((await workshop.GetAsync("parts/U9999")).Expect(404)));
    }

    [Fact]
    public async Task The_last_page_of_a_list_says_that_nothing_follows() =>
        Assert.Equal(JsonValueKind.Null, (await workshop.GetAsync("stations")).Expect(200).GetProperty("next").ValueKind);

    private async Task<IReadOnlyList<(string Path, string Address)>> AddressesAsync()
    {
        var unit = await workshop.UnitAsync();
        var issued = (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = "ORDER-7" }, Workshop.Quality)).Expect(201);
        var back = (
            await workshop.PostAsync("returns", new { serial = unit, complaint = "crackles on damp evenings" }, Workshop.ServiceDesk)
        )
            .Expect(201)
            .Id();
        (
            await workshop.PostAsync(
                $"returns/{back}/findings",
                new { code = "flux-on-ring", description = "flux left on the ring" },
                Workshop.ServiceDesk
            )
        ).Expect(201);
        var mounted = await workshop.MountAsync();
        (await workshop.PostAsync($"parts/{mounted}/nonconformities", new { code = "scratched-film", description = "a scratch" })).Expect(
            201
        );
        var load = (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { await workshop.MountAsync() },
                }
            )
        ).Expect(201).Id();
        var attempt = await workshop.OpenAsync(await workshop.RegisterAsync("diaphragm"), "mount");
        var free = await workshop.DiaphragmAsync();
        var capsule = await workshop.RegisterAsync("capsule");
        var (study, decision) = await DecisionsAsync(capsule);
        List<string> parts = [unit, mounted, free, capsule];
        return
        [
            .. parts.SelectMany(p =>
                new[] { "", "/gates", "/history", "/made-of" }.Select(w => ("/api/v1/parts/{serial}" + w, $"parts/{p}{w}"))
            ),
            ("/health/live", "/health/live"),
            ("/health/ready", "/health/ready"),
            ("/api/v1/parts/{serial}/mates", $"parts/{capsule}/mates?position=front"),
            ("/api/v1/parts/{serial}/certificates", $"parts/{unit}/certificates"),
            ("/api/v1/parts/{serial}/certificates/{revision}.json", $"parts/{unit}/certificates/1.json"),
            ("/api/v1/verify/{certificateId}", $"verify/{issued.Text("certificateId")}"),
            ("/api/v1/ledger/{serial}", $"ledger/{unit}"),
            ("/api/v1/search", "search?q=FILM"),
            ("/api/v1/kinds", "kinds?of=lot"),
            ("/api/v1/attempts/{id}", $"attempts/{attempt}"),
            ("/api/v1/loads/{id}", $"loads/{load}"),
            ("/api/v1/routes/{model}/{kind}", $"routes/{Workshop.Model}/capsule"),
            ("/api/v1/routes/{model}/{kind}/comparison", $"routes/{Workshop.Model}/capsule/comparison?left=1&right=1"),
            ("/api/v1/lots/{number}", $"lots/{Workshop.Film}"),
            ("/api/v1/lots/{number}/where-used", $"lots/{Workshop.Film}/where-used"),
            ("/api/v1/returns/{id}", $"returns/{back}"),
            ("/api/v1/instruments/{code}/affected", "instruments/RB-1/affected"),
            ("/api/v1/instruments/{code}/tokens", "instruments/RB-1/tokens"),
            ("/api/v1/quality/gauge-studies/{number}", $"quality/gauge-studies/{study}"),
            ("/api/v1/quality/film-lots/{number}/parts", $"quality/film-lots/{Workshop.Film}/parts"),
            ("/api/v1/quality/causes", "quality/causes?stage=verify&characteristic=ringHz"),
            ("/api/v1/quality/causes/parts", "quality/causes/parts?stage=verify"),
            ("/api/v1/quality/control-chart", "quality/control-chart?stage=verify&characteristic=ringHz"),
            ("/api/v1/quality/trace", $"quality/trace?what=lot&code={Workshop.Film}"),
            ("/api/v1/quality/trace/holds", $"quality/trace/holds?what=lot&code={Workshop.Film}"),
            ("/api/v1/quality/trace/holds/{id}", $"quality/trace/holds/{decision}"),
            (
                "/api/v1/quality/monthly-report.json",
                $"quality/monthly-report.json?month={workshop.Clock.GetUtcNow().AddMonths(-1):yyyy-MM}"
            ),
        ];
    }

    private async Task<(string Study, Guid Decision)> DecisionsAsync(string part)
    {
        var study = new
        {
            title = "Ring bench",
            characteristic = "ringHz",
            unit = "Hz",
            instrumentKind = "resonance-bench",
            parts = new[] { "P1", "P2" },
            people = new[] { "B1", "B2" },
            repeats = 2,
        };
        var number = (await workshop.PostAsync("quality/gauge-studies", study, Workshop.Quality)).Expect(201).Text("number");
        (
            await workshop.PostAsync(
                "quality/concessions",
                new
                {
                    reason = "a scratch does no harm",
                    pin = Pin,
                    code = "scratched-film",
                    mostParts = 3,
                },
                Workshop.Quality
            )
        ).Expect(201);
        (await workshop.PostAsync("instruments/RB-1/tokens", new { title = "bench" }, Workshop.Lead)).Expect(201);
        (await workshop.PostAsync("holds", new { part, reason = "looks odd" }, Workshop.Quality)).Expect(201);
        (
            await workshop.PostAsync(
                "quality/trace/holds",
                new
                {
                    what = "lot",
                    code = Workshop.Film,
                    reason = "pinholes",
                    pin = Pin,
                },
                Workshop.Quality
            )
        ).Expect(201);
        return (number, (await workshop.GetAsync($"quality/trace/holds?what=lot&code={Workshop.Film}")).Expect(200).List()[0].Id());
    }
}
