using Traceability.Domain.Codes;
using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

/// <summary>Nothing here touches a mouse: every word is typed, as a scanner types it, and ends with Enter.</summary>
[Collection(InChromium.Name)]
public sealed class StationWalkTests(Chromium chromium)
{
    private readonly Workshop workshop = chromium.Workshop;

    [Fact]
    public async Task A_diaphragm_goes_through_all_its_stages_by_typed_scans_and_Enter_alone()
    {
        var serial = await workshop.RegisterAsync("diaphragm", "JIG-51");
        await using var screen = await chromium.OpenAsync();
        await screen.Page.GotoAsync("/station");
        await screen.ScanAsync(PrintedCode.For(CodeKind.Badge, Workshop.Builder).Text, Workshop.PinOf(Workshop.Builder));
        await screen.ScanAsync(
            PrintedCode.For(CodeKind.Station, "BENCH-1").Text,
            PrintedCode.For(CodeKind.Carrier, "JIG-51").Text,
            "START"
        );
        await screen.ScanAsync(PrintedCode.For(CodeKind.Lot, Workshop.Film).Text, "850.50", "DONE");
        Assert.Contains("Mount passed", await screen.PromptAsync(), StringComparison.Ordinal);

        await screen.ScanAsync("PLATE-1", "START");
        await SendLogAsync(screen);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        await screen.ScanAsync("DONE");
        Assert.Contains("Cure passed", await screen.PromptAsync(), StringComparison.Ordinal);

        await screen.ScanAsync("BENCH-1", PrintedCode.For(CodeKind.Instrument, "RB-1").Text, "START", "901.5", "DONE");
        Assert.Contains("Resonance on the ring passed", await screen.PromptAsync(), StringComparison.Ordinal);
        Assert.Equal("finished", await workshop.StateOfAsync(serial));
        Assert.Empty(screen.Complaints);
    }

    [Fact]
    public async Task A_capsule_is_built_of_two_diaphragms_and_a_lot_without_a_mouse()
    {
        var (front, rear, capsule) = (
            await workshop.DiaphragmAsync(900),
            await workshop.DiaphragmAsync(903),
            await workshop.RegisterAsync("capsule")
        );
        await using var screen = await chromium.OpenAsync();
        await screen.AtStationAsync();
        await screen.ScanAsync(
            PrintedCode.For(CodeKind.Part, capsule).Text,
            "START",
            PrintedCode.For(CodeKind.Part, front).Text,
            rear,
            Workshop.Ring,
            "DONE"
        );
        Assert.Contains("Stack passed", await screen.PromptAsync(), StringComparison.Ordinal);
        await screen.ScanAsync("START", "70.50", "45", "DONE");
        Assert.Equal("finished", await workshop.StateOfAsync(capsule));
        Assert.Equal("fitted", await workshop.StateOfAsync(front));
    }

    [Fact]
    public async Task The_box_has_the_focus_after_every_scan_and_hides_the_PIN()
    {
        await using var screen = await chromium.OpenAsync();
        await screen.Page.GotoAsync("/station");
        foreach (
            var (scan, type) in new[]
            {
                (Workshop.Builder, "password"),
                (Workshop.PinOf(Workshop.Builder), "text"),
                ("BENCH-1", "text"),
                ("NOTHING-1", "text"),
            }
        )
        {
            await screen.ScanAsync(scan);
            Assert.Equal("scan", await screen.Page.EvaluateAsync<string>("document.activeElement.id"));
            Assert.Equal(type, await screen.Page.Locator("#scan").GetAttributeAsync("type"));
            Assert.Equal(scan == "NOTHING-1" ? scan : "", await screen.Page.Locator("#scan").InputValueAsync());
        }
    }

    [Fact]
    public async Task A_value_is_judged_while_it_is_typed_and_a_refused_scan_flashes()
    {
        await using var screen = await chromium.OpenAsync();
        var serial = await workshop.RegisterAsync("diaphragm");
        await screen.AtStationAsync();
        await screen.ScanAsync(serial, "START", Workshop.Film);
        Assert.Contains("700 to 1100 Hz", await screen.Page.Locator("#st-limits").InnerTextAsync(), StringComparison.Ordinal);
        await screen.PressAsync(Screen.HandMs, "699,9");
        Assert.Equal("outside", await screen.Page.Locator("#st-verdict").InnerTextAsync());
        await screen.Page.Locator("#scan").FillAsync("700");
        Assert.Equal("inside", await screen.Page.Locator("#st-verdict").InnerTextAsync());
        await screen.Page.Locator("#scan").FillAsync("");
        Assert.DoesNotContain("st-flash", await screen.Page.Locator("#station").GetAttributeAsync("class"), StringComparison.Ordinal);
        await screen.ScanAsync("DONE");
        Assert.Contains("st-flash", await screen.Page.Locator("#station").GetAttributeAsync("class"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_script_the_station_works_all_the_same()
    {
        await using var screen = await chromium.OpenAsync(script: false);
        var serial = await workshop.RegisterAsync("diaphragm");
        await screen.Page.GotoAsync("/station");
        foreach (
            var text in new[]
            {
                Workshop.Builder,
                Workshop.PinOf(Workshop.Builder),
                "BENCH-1",
                serial,
                "START",
                Workshop.Film,
                "850",
                "DONE",
            }
        )
        {
            await screen.TypeInBoxAsync(text);
            await screen.EnterAndLoadAsync();
        }

        Assert.Contains("Mount passed", await screen.PromptAsync(), StringComparison.Ordinal);
    }

    /// <summary>
    /// Opens the browser's own dialog for a file. On a busy machine the browser forgets the key press before it comes to it, and the person
    /// presses again.
    /// </summary>
    private static async Task<Microsoft.Playwright.IFileChooser> ChooserAsync(Screen screen)
    {
        for (var again = 2; ; again--)
        {
            await screen.TabToAsync("input[type=file][name=file]");
            try
            {
                return await screen.Page.RunAndWaitForFileChooserAsync(
                    () => screen.PressAsync(Screen.HandMs, "", "Enter"),
                    new() { Timeout = 15_000 }
                );
            }
            catch (TimeoutException) when (again > 0) { }
        }
    }

    private async Task SendLogAsync(Screen screen)
    {
        var chooser = await ChooserAsync(screen);
        await chooser.SetFilesAsync(
            new Microsoft.Playwright.FilePayload
            {
                Name = "plate.csv",
                MimeType = "text/csv",
                Buffer = System.Text.Encoding.UTF8.GetBytes(workshop.LogOfNow()),
            }
        );
        await screen.TabToAsync(".st-file button");
        await screen.EnterAndLoadAsync();
        Assert.DoesNotContain("Refused", await screen.PromptAsync(), StringComparison.Ordinal);
    }
}
