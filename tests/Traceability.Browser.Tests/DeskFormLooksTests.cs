using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

/// <summary>Forms of the desk in use: refused, sent, tried out; they look right in between, too.</summary>
[Collection(InChromium.Name)]
public sealed class DeskFormLooksTests(Chromium chromium)
{
    private readonly Workshop workshop = chromium.Workshop;

    [Fact]
    public async Task A_refused_form_looks_right_and_the_refusal_has_the_focus()
    {
        var capsule = await workshop.CapsuleAsync();
        await using var screen = await chromium.SignedInAsync(390, ColorScheme.Light, Workshop.Quality);
        await screen.Page.GotoAsync($"/parts/{capsule}");
        await screen.Page.Locator("summary", new() { HasText = "Report a nonconformity" }).ClickAsync();
        await screen.Page.Locator("#raise-description").FillAsync("typed once");
        await screen.Page.Locator("text=Record it; the part stops").ClickAsync();
        await screen.Page.Locator("[role=alert]:focus").WaitForAsync();
        Assert.Equal("typed once", await screen.Page.Locator("#raise-description").InputValueAsync());
        await LooksTests.LooksRightAsync(screen, "a refused form");
        Assert.Empty((await screen.Page.RunAxe()).Violations);
    }

    [Fact]
    public async Task Notices_look_right_and_are_acknowledged_from_the_desk()
    {
        await MeasuredAsync(900, 901, 900, 898, 900, 901, 900, 898, 900, 901, 900, 898, 900, 901, 900, 898, 900, 901, 900, 898, 900, 919);
        await using (var dark = await chromium.SignedInAsync(390, ColorScheme.Dark, Workshop.Quality))
        {
            await LooksTests.InOrderAsync(dark, "/quality/notices");
        }

        await using var screen = await chromium.SignedInAsync(1280, ColorScheme.Light, Workshop.Quality);
        await LooksTests.InOrderAsync(screen, "/quality");
        var notice = screen.Page.Locator(".notices li", new() { HasText = "Rule 1" }).First;
        await notice.Locator("summary").ClickAsync();
        await notice.Locator("textarea").FillAsync("looked at the jig");
        await LooksTests.LooksRightAsync(screen, "an open notice");
        await notice.Locator("button").ClickAsync();
        await screen.Page.Locator("text=The notice is acknowledged").WaitForAsync();
        await LooksTests.InOrderAsync(screen, "/quality/notices");
    }

    [Fact]
    public async Task A_call_tried_on_the_page_for_programs_shows_its_answer()
    {
        await using var screen = await chromium.SignedInAsync(1280, ColorScheme.Light, Workshop.Quality);
        await screen.Page.GotoAsync("/docs");
        var call = screen.Page.Locator(
            "details.call",
            new() { Has = screen.Page.Locator("form[data-method=POST][data-path='/api/v1/lots']") }
        );
        await call.Locator("summary").ClickAsync();
        var number = $"DOCS-{Guid.NewGuid():N}"[..16].ToUpperInvariant();
        await call.Locator("textarea")
            .FillAsync(
                $$"""{"number":"{{number}}","kind":"glue","supplier":"Invented Glue","supplierLot":"S-1","quantity":1,"unit":"kg"}"""
            );
        await call.Locator("button").ClickAsync();
        await call.Locator(".answer p", new() { HasText = "201" }).WaitForAsync();
        Assert.Contains(number, await call.Locator(".answer pre").InnerTextAsync(), StringComparison.Ordinal);
        await LooksTests.LooksRightAsync(screen, "an answer");
        (await workshop.GetAsync($"lots/{number}")).Expect(200);
    }

    private async Task MeasuredAsync(params decimal[] ringHz)
    {
        var serials = new List<string>();
        foreach (var _ in ringHz)
        {
            serials.Add(await workshop.MountAsync());
        }

        await workshop.CureAsync([.. serials]);
        foreach (var (serial, value) in serials.Zip(ringHz))
        {
            await workshop.VerifyAsync(serial, value);
        }
    }
}
