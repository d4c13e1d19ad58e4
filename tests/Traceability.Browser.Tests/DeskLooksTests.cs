using Microsoft.Playwright;
using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

/// <summary>
/// Every page of the desk, narrow and wide, light and dark, with names that are long: nothing scrolls sideways, the browser refuses
/// nothing, and axe, which takes seconds on a page, finds nothing wide and light nor narrow and dark.
/// </summary>
[Collection(InChromium.Name)]
public sealed class DeskLooksTests(Chromium chromium)
{
    private const string LongName = "Bartholomew Maximilian Featherstonehaugh-Longname of the Far Valley Workshop";
    private readonly Workshop workshop = chromium.Workshop;

    public static TheoryData<int, ColorScheme> Screens => LooksTests.Screens;

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Pages_of_the_quality_lead_are_in_order(int width, ColorScheme scheme)
    {
        var (unit, capsule) = await BuiltAsync();
        var nonconformity = await RaisedAsync(capsule);
        await using var screen = await chromium.SignedInAsync(width, scheme, Workshop.Quality);
        foreach (
            var path in new[]
            {
                "/",
                "/parts",
                "/parts?kind=nothing-like-it",
                $"/parts/{unit}",
                $"/parts/{capsule}",
                $"/parts/{unit}?asOf=2020-01-01",
                $"/parts/{unit}/certificate",
                $"/parts/{capsule}/certificate",
                "/lots",
                "/lots/new",
                $"/lots/{Workshop.Film}",
                "/nonconformities",
                "/nonconformities?closed=true",
                $"/nonconformities/{nonconformity}",
                $"/nonconformities/{nonconformity}?kind=Rework&returnTo=stack",
                "/concessions",
                $"/nonconformities/{nonconformity}?kind=Concession",
                "/holds",
                "/holds?lifted=true",
                "/holds/new",
                $"/holds/new?lot={Workshop.Film}",
                "/holds/new?instrument=RB-1",
                "/instruments",
                "/instruments/RB-1",
                "/gauge-studies",
                $"/gauge-studies/{await StudyAsync(false)}",
                $"/gauge-studies/{await StudyAsync(true)}",
                "/returns",
                "/trace",
                $"/trace?what=lot&code={Workshop.Film}",
                $"/trace?what=lot&code={Workshop.Film}&at=2020-01-01",
                "/trace?what=instrument&code=RB-1",
                "/trace?what=load&code=none",
                "/search?q=U2",
                "/search?q=nothing-like-it",
                "/quality",
                "/quality?from=2020-01-01&to=2020-01-02",
                "/quality/notices",
                "/quality/film-lots",
                "/quality/film-lots?from=2020-01-01&to=2020-01-02",
                $"/quality/film-lots/{Workshop.Film}",
                "/quality/causes",
                "/quality/causes?stage=verify&characteristic=ringHz",
                "/quality/control-chart",
                "/quality/control-chart?stage=verify&characteristic=ringHz",
                "/quality/yield?by=stage",
                "/quality/yield?from=2020-01-01&to=2020-01-02",
                "/quality/monthly-report",
                $"/quality/monthly-report?month={workshop.Clock.GetUtcNow():yyyy-MM}",
                "/quality/monthly-report?month=1999-05",
                $"/trace?what=lot&code={await HeldLotAsync()}",
            }
        )
        {
            await InOrderAsync(screen, path, width, scheme);
        }
    }

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Pages_of_the_workshop_lead_the_service_desk_and_strangers_are_in_order(int width, ColorScheme scheme)
    {
        var badge = $"LONG-{Guid.NewGuid():N}"[..20].ToUpperInvariant();
        (
            await workshop.PostAsync(
                "people",
                new
                {
                    badge,
                    name = LongName,
                    roles = new[] { "builder" },
                },
                Workshop.Lead
            )
        ).Expect(201);
        var tray = await ProposedAsync();
        await using var lead = await chromium.SignedInAsync(width, scheme, Workshop.Lead);
        foreach (
            var path in new[]
            {
                "/",
                "/setup",
                "/setup/people",
                $"/setup/people/{badge}",
                "/setup/stations",
                "/setup/routes",
                "/setup/routes/TEST-1/unit/1",
                "/setup/routes/TEST-1/unit/compare",
                $"/setup/routes/TEST-1/{tray}/2",
                $"/setup/routes/TEST-1/{tray}/compare?left=1&right=2",
                "/parts?kind=unit&model=TEST-1&revision=1&finished=false",
                "/instruments",
                "/instruments/RB-1",
                "/instruments/RB-1/tokens",
                "/docs",
            }
        )
        {
            await InOrderAsync(lead, path, width, scheme);
        }

        await using var service = await chromium.SignedInAsync(width, scheme, Workshop.ServiceDesk);
        var (unit, _) = await BuiltAsync();
        var certificate = (await workshop.PostAsync($"parts/{unit}/certificates", new { }, Workshop.Quality))
            .Expect(201)
            .Text("certificateId");
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = LongName[..40] }, Workshop.Quality)).Expect(201);
        var back = (
            await workshop.PostAsync(
                "returns",
                new { serial = unit, complaint = $"{LongName} hears it rustle on warm, humid days" },
                Workshop.ServiceDesk
            )
        )
            .Expect(201)
            .Id();
        foreach (var path in new[] { "/", "/returns", "/returns/new", $"/returns/{back}", "/search?q=nothing-like-it" })
        {
            await InOrderAsync(service, path, width, scheme);
        }

        await using var stranger = await chromium.OpenAsync(width, scheme);
        foreach (var path in new[] { "/verify", $"/verify/{certificate}", "/docs", "/first-account", "/pin" })
        {
            await InOrderAsync(stranger, path, width, scheme);
        }

        await stranger.Page.GotoAsync("/verify/NOT-ISSUED-HERE");
        await LooksTests.LooksRightAsync(stranger, "a certificate that is not ours");
    }

    private static async Task InOrderAsync(Screen screen, string path, int width, ColorScheme scheme)
    {
        if ((width > 600) == (scheme == ColorScheme.Light))
        {
            await LooksTests.InOrderAsync(screen, path);
            return;
        }

        await screen.Page.GotoAsync(path);
        await LooksTests.FitsAsync(screen, path);
        Assert.Empty(screen.Complaints);
    }

    private async Task<(string Unit, string Capsule)> BuiltAsync()
    {
        var capsule = await workshop.CapsuleAsync();
        return (await workshop.UnitAsync(), capsule);
    }

    /// <summary>A gauge study, just begun or measured whole.</summary>
    private async Task<string> StudyAsync(bool measured)
    {
        string[] parts = ["piece-one-with-a-long-name-on-its-tag", "P2", "P3"],
            people = [Workshop.Builder, Workshop.OtherBuilder];
        var study = new
        {
            title = LongName,
            characteristic = "ringHz",
            unit = "Hz",
            instrumentKind = "resonance-bench",
            parts,
            people,
            repeats = 2,
            lower = 880,
            upper = 920,
        };
        var number = (await workshop.PostAsync("quality/gauge-studies", study, Workshop.Quality)).Expect(201).Text("number");
        var readings =
            from p in parts
            from b in people
            from trial in new[] { 1, 2 }
            select new
            {
                part = p,
                person = b,
                trial,
                value = 900 + p.Length + trial,
            };
        if (measured)
        {
            (await workshop.PostAsync($"quality/gauge-studies/{number}/readings", readings)).Expect(201);
        }

        return number;
    }

    /// <summary>A lot whose trace was held, so that the page offers to lift it.</summary>
    private async Task<string> HeldLotAsync()
    {
        var number = $"HELD-{Guid.NewGuid():N}"[..14].ToUpperInvariant();
        await WorkshopSetUp.LotAsync(workshop, number, "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        await workshop.MountAsync(number);
        (
            await workshop.PostAsync(
                "quality/trace/holds",
                new
                {
                    what = "lot",
                    code = number,
                    reason = $"seen by {LongName}",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);
        return number;
    }

    /// <summary>A kind of part with a route and a proposal that changes nearly everything, by its kind.</summary>
    private async Task<string> ProposedAsync()
    {
        var kind = $"tray-{string.Concat(Guid.NewGuid().ToString("N").Where(char.IsLetter))}";
        await workshop.RouteAsync($"{Head(1)}approvedBy: Q1\nstages:\n{Stage("look", "3")}{Stage("count", "3")}");
        await LoadAsync($"{Head(2)}stages:\n{Stage("count", "3")}{Stage("look", "5")}{Stage("a-further-look-under-a-lens", "1")}");
        return kind;

        string Head(int revision) =>
            $"model: TEST-1\nkind: {kind}\nrevision: {revision}\ntitle: {LongName}\nserialPrefix: T\nauthor: B1\neffectiveFrom:"
            + " 2020-01-01\n";

        static string Stage(string code, string upper) =>
            $"  - code: {code}\n    title: {code}\n    method: entered-limits\n    cautions: [hot-plate]\n    characteristics:\n      -"
            + $" {{name: numberOfFaultsSeenUnderTheLens, unit: count, upper: {upper}}}\n";

        async Task LoadAsync(string text) =>
            (await workshop.PostAsync("routes", new StringContent(text, System.Text.Encoding.UTF8, "text/yaml"), Workshop.Lead)).Expect(
                201
            );
    }

    private async Task<Guid> RaisedAsync(string serial)
    {
        var description = $"{string.Join(' ', Enumerable.Repeat("a scratch across the film,", 12))} seen by {LongName}";
        return (
            await workshop.PostAsync(
                $"parts/{serial}/nonconformities",
                new { code = "scratched-film-next-to-the-second-screw", description }
            )
        )
            .Expect(201)
            .Id();
    }
}
