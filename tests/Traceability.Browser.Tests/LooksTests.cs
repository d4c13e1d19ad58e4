using Deque.AxeCore.Commons;
using Microsoft.Playwright;
using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

/// <summary>
/// Every page of the builders, narrow and wide, light and dark: axe finds nothing, nothing scrolls sideways, the browser refuses nothing.
/// </summary>
[Collection(InChromium.Name)]
public sealed class LooksTests(Chromium chromium)
{
    private static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    private readonly Workshop workshop = chromium.Workshop;

    /// <summary>Scans after which the station looks as it did before but for a line: axe takes seconds.</summary>
    private static readonly string[] Plain = ["BENCH-1", Workshop.Film, "650"];

    public static TheoryData<int, ColorScheme> Screens =>
        new()
        {
            { 1280, ColorScheme.Light },
            { 1280, ColorScheme.Dark },
            { 390, ColorScheme.Light },
            { 390, ColorScheme.Dark },
        };

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Pages_at_rest_are_in_order(int width, ColorScheme scheme)
    {
        await using var screen = await chromium.OpenAsync(width, scheme);
        foreach (var path in new[] { "/sign-in", "/station" })
        {
            await InOrderAsync(screen, path);
        }

        await workshop.MountAsync(carrier: $"JIG-{Guid.NewGuid():N}");
        await screen.AtStationAsync();
        foreach (
            var path in new[]
            {
                "/bench",
                "/parts/new",
                "/labels",
                "/labels?Kind=lots",
                "/labels?Kind=stations&Find=nothing-like-it",
                "/sign-out",
            }
        )
        {
            await InOrderAsync(screen, path);
        }
    }

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task The_station_is_in_order_in_every_state(int width, ColorScheme scheme)
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await using var screen = await chromium.OpenAsync(width, scheme);
        await screen.Page.GotoAsync("/station");
        foreach (
            var scan in new[]
            {
                Workshop.Builder,
                Workshop.PinOf(Workshop.Builder),
                "BENCH-1",
                serial,
                "START",
                Workshop.Film,
                "NONSENSE-1",
                "650",
                "CORRECT",
                "651",
                "MISTYPED",
                "DONE",
            }
        )
        {
            await screen.ScanAsync(scan);
            if (!Plain.Contains(scan))
            {
                await LooksRightAsync(screen, $"after {scan}");
            }
        }

        Assert.Contains("FAILED", await screen.PromptAsync(), StringComparison.Ordinal);
        var curing = await workshop.MountAsync();
        await screen.ScanAsync("PLATE-1", "CLEAR", curing, "START");
        await LooksRightAsync(screen, "with a file to send");
        Assert.Empty(screen.Complaints);
    }

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Problems_are_in_order_too(int width, ColorScheme scheme)
    {
        await using var screen = await chromium.OpenAsync(width, scheme);
        await screen.Page.GotoAsync("/no/such/page");
        await LooksRightAsync(screen, "a page that is not there");
        await screen.Page.GotoAsync("/sign-in");
        await screen.Page.Locator("#badge").FillAsync("B9");
        await screen.Page.Locator("#pin").FillAsync("9");
        await screen.Page.Locator("#pin").PressAsync("Enter");
        await screen.Page.Locator("#problem").WaitForAsync();
        await LooksRightAsync(screen, "a wrong PIN");
    }

    /// <summary>The look itself can fail.</summary>
    [Fact]
    public async Task A_picture_without_words_is_found()
    {
        await using var screen = await chromium.OpenAsync();
        await screen.Page.GotoAsync("/sign-in");
        await screen.Page.EvaluateAsync("document.querySelector('main').append(document.createElement('img'))");
        var found = await Assert.ThrowsAsync<Xunit.Sdk.TrueException>(() => LooksRightAsync(screen, "with a picture"));
        Assert.Contains("image-alt", found.Message, StringComparison.Ordinal);
    }

    internal static async Task InOrderAsync(Screen screen, string path)
    {
        await screen.Page.GotoAsync(path);
        await LooksRightAsync(screen, path);
        Assert.Empty(screen.Complaints);
    }

    internal static async Task LooksRightAsync(Screen screen, string where)
    {
        await FitsAsync(screen, where);
        // Run in the page itself: RunAxe opens a further window for every page it looks at, which takes longer than looking.
        await screen.Page.EvaluateAsync(Axe);
        var found = await screen.Page.EvaluateAsync<string[]>(
            "async () => (await axe.run(document, { resultTypes: ['violations'] })).violations.map(v => `${v.id}: ${v.help} at"
                + " ${v.nodes.slice(0, 3).map(n => n.html).join(', ')}`)"
        );
        Assert.True(found.Length == 0, $"{where}: {string.Join("; ", found)}");
    }

    internal static async Task FitsAsync(Screen screen, string where) =>
        Assert.True(
            await screen.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"),
            $"{where} scrolls sideways"
        );
}
