using Microsoft.Playwright;
using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

/// <summary>The quality lead's two stories, from the question to the exported list and the hold: a lot found bad after shipping, an instrument found drifted.</summary>
[Collection(InChromium.Name)]
public sealed class TraceStoryTests(Chromium chromium)
{
    private readonly Workshop workshop = chromium.Workshop;

    [Fact]
    public async Task A_lot_found_bad_after_shipping_is_followed_exported_and_held()
    {
        var lot = $"STORY-{Guid.NewGuid():N}"[..14].ToUpperInvariant();
        await WorkshopSetUp.LotAsync(workshop, lot, "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var capsule = await workshop.CapsuleAsync(await workshop.DiaphragmAsync(film: lot), await workshop.DiaphragmAsync(film: lot));
        var unit = await workshop.UnitAsync(capsule);
        (await workshop.PostAsync($"parts/{unit}/certificates", new { }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = "Studio Nowhere" }, Workshop.Quality)).Expect(201);
        var atBench = await workshop.MountAsync(lot);

        await using var screen = await SignedInAsync();
        await screen.Page.GotoAsync($"/lots/{lot}");
        await screen.Page.Locator($"a[href='/trace?what=lot&code={lot}']").First.ClickAsync();
        var list = screen.Page.Locator("main table");
        Assert.Contains("Studio Nowhere", await list.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("Studio Nowhere", await ExportedAsync(screen), StringComparison.Ordinal);
        Assert.Contains("4 are with customers", await screen.Page.Locator("ul.touches").InnerTextAsync(), StringComparison.Ordinal);
        await HoldAsync(screen, "pinholes in the film");
        Assert.Equal("on-hold", await workshop.StateOfAsync(atBench));
        Assert.Contains((await workshop.GetAsync("holds?open=true&limit=500")).Expect(200).List(), h => h.Has("part") && h.Text("part") == unit);
        (await workshop.PostAsync("loads", new { stage = "cure", station = "PLATE-1", parts = new[] { atBench } })).Expect(409);
        Assert.Empty(screen.Complaints);
    }

    [Fact]
    public async Task An_instrument_found_drifted_leads_to_what_it_measured_since_its_last_good_calibration()
    {
        var code = $"DR-{Guid.NewGuid():N}"[..12].ToUpperInvariant();
        (await workshop.PostAsync("instruments", new { code, kind = "resonance-bench", title = "Second resonance bench" }, Workshop.Lead)).Expect(201);
        await CalibrateAsync(code, passed: true);
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        await workshop.RecordAsync(serial, "verify", new { instruments = new[] { code }, readings = new[] { new { characteristic = "ringHz", value = 900 } } });
        var other = await workshop.DiaphragmAsync();
        await CalibrateAsync(code, passed: false);

        await using var screen = await SignedInAsync();
        await screen.Page.GotoAsync($"/instruments/{code}");
        await screen.Page.Locator($"a[href='/trace?what=instrument&code={code}']").ClickAsync();
        var csv = await ExportedAsync(screen);
        Assert.Contains(serial, csv, StringComparison.Ordinal);
        Assert.DoesNotContain(other, csv, StringComparison.Ordinal);
        await HoldAsync(screen, "shows too much");
        Assert.Equal("on-hold", await workshop.StateOfAsync(serial));
        Assert.Equal("finished", await workshop.StateOfAsync(other));
        Assert.Empty(screen.Complaints);
    }

    private async Task CalibrateAsync(string code, bool passed)
    {
        var today = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime);
        (await workshop.PostAsync($"instruments/{code}/calibrations", new { calibratedOn = today, dueOn = today.AddDays(365), reference = "invented", passed }, Workshop.Quality)).Expect(201);
    }

    private static async Task<string> ExportedAsync(Screen screen)
    {
        var download = await screen.Page.RunAndWaitForDownloadAsync(() => screen.Page.Locator("a[download]").ClickAsync());
        await using var file = await download.CreateReadStreamAsync();
        using var reader = new StreamReader(file);
        return await reader.ReadToEndAsync();
    }

    private static async Task HoldAsync(Screen screen, string reason)
    {
        await screen.Page.Locator("#hold-reason").FillAsync(reason);
        await screen.Page.Locator("#hold-_Pin").FillAsync(Workshop.PinOf(Workshop.Quality));
        await screen.Page.Locator("form:has(#hold-reason) button[type=submit]").ClickAsync();
        await screen.Page.Locator(".message-ok[role=status]").WaitForAsync();
    }

    private async Task<Screen> SignedInAsync()
    {
        var screen = await chromium.OpenAsync(1280, ColorScheme.Light);
        await screen.Page.GotoAsync("/sign-in");
        await screen.Page.Locator("#badge").FillAsync(Workshop.Quality);
        await screen.Page.Locator("#pin").FillAsync(Workshop.PinOf(Workshop.Quality));
        await screen.Page.Locator("#pin").PressAsync("Enter");
        await screen.Page.Locator("form[action='/sign-out']").WaitForAsync();
        return screen;
    }
}
