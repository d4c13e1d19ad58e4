using Microsoft.Playwright;
using Traceability.Web.Tests;
using Traceability.Web.Tests.Demonstration;

namespace Traceability.Browser.Tests;

/// <summary>The tests' workshop over the wire, and the machine's own Chromium in front of it. No browser is downloaded.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string Program = Environment.GetEnvironmentVariable("TRACEABILITY_CHROMIUM") is { Length: > 0 } set
        ? set
        : "/usr/bin/chromium";

    private IPlaywright playwright = null!;
    private IBrowser browser = null!;

    private Task<DemoWorkshop>? seed;

    public Workshop Workshop { get; } = new() { OverTheWire = true };

    /// <summary>
    /// The seed scenario over the wire, loaded once, when the first test asks for it. Tests in this collection follow each other.
    /// </summary>
    public Task<DemoWorkshop> SeedAsync() => seed ??= LoadSeedAsync();

    public async Task InitializeAsync()
    {
        if (!File.Exists(Program))
        {
            throw new FileNotFoundException(
                "The browser tests need Chromium: install it (apt-get install chromium) or name it in TRACEABILITY_CHROMIUM. It is not"
                    + $" at {Program}."
            );
        }

        await Workshop.InitializeAsync();
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath = Program,
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                ],
            }
        );
    }

    public async Task DisposeAsync()
    {
        await browser.DisposeAsync();
        playwright.Dispose();
        await Workshop.DisposeAsync();
        if (seed is { IsCompletedSuccessfully: true })
        {
            await (await seed).DisposeAsync();
        }
    }

    /// <summary>
    /// A fresh screen, as wide and in the scheme that is asked for; before the tests' workshop unless another address is given.
    /// </summary>
    public async Task<Screen> OpenAsync(int width = 1280, ColorScheme scheme = ColorScheme.Light, bool script = true, Uri? at = null)
    {
        var context = await browser.NewContextAsync(
            new()
            {
                BaseURL = (at ?? Workshop.Address).ToString(),
                ViewportSize = new() { Width = width, Height = width > 600 ? 900 : 844 },
                ColorScheme = scheme,
                JavaScriptEnabled = script,
            }
        );
        return new(await context.NewPageAsync());
    }

    private static async Task<DemoWorkshop> LoadSeedAsync()
    {
        var demo = new DemoWorkshop { OverTheWire = true };
        await demo.InitializeAsync();
        return demo;
    }
}

/// <summary>One browser for all tests of this assembly: they follow each other, so that two cores are enough.</summary>
[CollectionDefinition(Name)]
public sealed class InChromium : ICollectionFixture<Chromium>
{
    public const string Name = "in Chromium";
}
