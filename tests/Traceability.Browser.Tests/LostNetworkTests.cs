using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

[Collection(InChromium.Name)]
public sealed class LostNetworkTests(Chromium chromium)
{
    private readonly Workshop workshop = chromium.Workshop;

    [Fact]
    public async Task A_scan_made_while_the_network_is_gone_is_recorded_once_when_it_is_back()
    {
        await using var screen = await chromium.OpenAsync();
        var serial = await workshop.RegisterAsync("diaphragm");
        await screen.AtStationAsync();
        await screen.ScanAsync(serial, "START", Workshop.Film);
        await screen.Page.Context.SetOfflineAsync(true);
        await screen.PressAsync(Screen.HandMs, "850.50");
        await screen.PressAsync(Screen.HandMs, "", "Enter");
        await screen.Page.Locator("#st-notice:not([hidden])").WaitForAsync();
        Assert.Contains("sent again by itself", await screen.Page.Locator("#st-notice").InnerTextAsync(), StringComparison.Ordinal);

        await screen.Page.Context.SetOfflineAsync(false);
        await screen.Page.Locator("#st-next:has-text('850.50 Hz: inside')").WaitForAsync();
        Assert.True(await screen.Page.Locator("#st-notice").IsHiddenAsync());
        await screen.ScanAsync("DONE");
        Assert.Contains("Mount passed", await screen.PromptAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_that_is_lost_on_its_way_does_not_make_a_second_record()
    {
        await using var screen = await chromium.OpenAsync();
        var capsule = await workshop.RegisterAsync("capsule");
        var (front, rear) = (await workshop.DiaphragmAsync(900), await workshop.DiaphragmAsync(901));
        await workshop.RecordAsync(
            capsule,
            "stack",
            new
            {
                fittings = new object[]
                {
                    new { position = "front", child = front },
                    new { position = "rear", child = rear },
                    new { position = "ring", lot = Workshop.Ring },
                },
            }
        );
        await screen.AtStationAsync();
        await screen.ScanAsync(capsule, "START");
        var lost = 0;
        await screen.Page.RouteAsync(
            "**/station",
            async route =>
            {
                if (route.Request.Method == "POST" && lost++ == 0)
                {
                    await route.FetchAsync();
                    await route.AbortAsync();
                    return;
                }

                await route.ContinueAsync();
            }
        );
        await screen.ScanAsync("45");
        Assert.True(lost > 1);
        await screen.ScanAsync("46");
        var history = (await workshop.GetAsync($"parts/{capsule}/history?limit=500")).Expect(200).ToString();
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(history, "\"capacitancePf\""));
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(history, "\"roomHumidityPct\""));
    }

    [Fact]
    public async Task What_was_typed_but_not_sent_survives_a_reload()
    {
        await using var screen = await chromium.OpenAsync();
        await screen.AtStationAsync();
        await screen.PressAsync(Screen.HandMs, "D26-0001");
        await screen.Page.ReloadAsync();
        Assert.Equal("D26-0001", await screen.Page.Locator("#scan").InputValueAsync());
    }

    [Fact]
    public async Task A_PIN_is_never_kept_in_the_browser()
    {
        await using var screen = await chromium.OpenAsync();
        await screen.Page.GotoAsync("/station");
        await screen.ScanAsync(Workshop.Builder);
        await screen.Page.Context.SetOfflineAsync(true);
        await screen.PressAsync(Screen.HandMs, "739155");
        Assert.DoesNotContain(
            "739155",
            await screen.Page.EvaluateAsync<string>("JSON.stringify(sessionStorage)"),
            StringComparison.Ordinal
        );
        await screen.PressAsync(Screen.HandMs, "", "Enter");
        await screen.Page.Locator("#st-notice:not([hidden])").WaitForAsync();
        Assert.DoesNotContain(
            "739155",
            await screen.Page.EvaluateAsync<string>("JSON.stringify(sessionStorage) + JSON.stringify(localStorage)"),
            StringComparison.Ordinal
        );
    }
}
