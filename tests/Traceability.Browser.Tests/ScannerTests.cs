using Traceability.Domain.Codes;
using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

/// <summary>A scanner is told from a hand by how fast the keys come, whatever has the focus.</summary>
[Collection(InChromium.Name)]
public sealed class ScannerTests(Chromium chromium)
{
    private const string Abandon = "#st-actions button[value=ABANDON]";

    private static readonly string FilmCode = PrintedCode.For(CodeKind.Lot, Workshop.Film).Text;

    private readonly Workshop workshop = chromium.Workshop;

    [Theory]
    [InlineData(Abandon, "Enter")]
    [InlineData(Abandon, "Tab")]
    [InlineData("summary", "Enter")]
    [InlineData(".masthead-nav a", "Enter")]
    [InlineData(".masthead-nav a", "Tab")]
    [InlineData("#scan", "Tab")]
    [InlineData("select", "Enter")]
    [InlineData("#other", "Enter")]
    public async Task A_scan_is_heard_whatever_has_the_focus_and_ends_with_Enter_or_Tab(string focused, string last)
    {
        await using var screen = await MountingAsync();
        await screen.Page.EvaluateAsync(
            "document.querySelector('.st-front').insertAdjacentHTML('beforeend', '<select"
                + " aria-label=x><option>a<option>L<option>T<option>-</select><input id=other aria-label=y value=kept>')"
        );
        await screen.Page.Locator(focused).First.FocusAsync();

        await screen.BurstAsync(FilmCode, last);

        Assert.Contains($"lot {Workshop.Film}", await screen.PromptAsync(), StringComparison.Ordinal);
        Assert.Equal("scan", await screen.Page.EvaluateAsync<string>("document.activeElement.id"));
        Assert.Equal("", await screen.Page.Locator("#scan").InputValueAsync());
        Assert.Equal("a", await screen.Page.Locator("select").InputValueAsync());
        Assert.Equal("kept", await screen.Page.Locator("#other").InputValueAsync());
        Assert.EndsWith("/station", screen.Page.Url, StringComparison.Ordinal);
        Assert.Empty(screen.Complaints);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Half_typed_text_and_a_scan_do_not_run_together(bool reloaded)
    {
        await using var screen = await MountingAsync();
        await screen.PressAsync(Screen.HandMs, "11.5");
        if (reloaded)
        {
            await screen.Page.ReloadAsync();
            Assert.Equal("11.5", await screen.Page.Locator("#scan").InputValueAsync());
        }

        await screen.BurstAsync(FilmCode);

        Assert.Contains($"lot {Workshop.Film}", await screen.PromptAsync(), StringComparison.Ordinal);
        Assert.Equal("", await screen.Page.Locator("#scan").InputValueAsync());
        Assert.Contains("not sent: 11.5", await screen.Page.Locator("#st-notice").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_end_of_the_same_scan_sends_nothing_more()
    {
        await using var screen = await MountingAsync();
        var sent = 0;
        screen.Page.Request += (_, request) => sent += request.Method == "POST" ? 1 : 0;
        await screen.Page.Locator(Abandon).FocusAsync();
        await screen.PressAsync(20, FilmCode, "Enter");
        screen.Rest(0);
        await screen.PressAsync(20, "", "Enter");
        await screen.Page.Locator($"#st-next:has-text('lot {Workshop.Film}')").WaitForAsync();
        Assert.Equal(1, sent);
    }

    [Fact]
    public async Task A_scanner_that_stutters_is_one_scan()
    {
        await using var screen = await MountingAsync();
        await screen.Page.Locator(Abandon).FocusAsync();
        foreach (var piece in new[] { FilmCode[..2], FilmCode[2..7] })
        {
            await screen.PressAsync(20, piece);
            screen.Rest(100);
        }

        await screen.PressAsync(20, FilmCode[7..], "Enter");
        await screen.Page.Locator($"#st-next:has-text('lot {Workshop.Film}')").WaitForAsync();
    }

    [Fact]
    public async Task For_a_hand_Tab_moves_on_and_Enter_presses_what_has_the_focus()
    {
        await using var screen = await MountingAsync();
        await screen.PressAsync(Screen.HandMs, "850", "Tab");
        Assert.Equal("BUTTON", await screen.Page.EvaluateAsync<string>("document.activeElement.tagName"));
        Assert.Equal("850", await screen.Page.Locator("#scan").InputValueAsync());
        await screen.TabToAsync(Abandon);
        await screen.PressAsync(Screen.HandMs, "", "Enter");
        await screen.Page.Locator("#st-next:has-text('Type in words why')").WaitForAsync();
    }

    [Fact]
    public async Task Three_quick_characters_and_a_key_that_is_held_are_no_scan()
    {
        await using var screen = await MountingAsync();
        await screen.PressAsync(Screen.HandMs, "9");
        await screen.PressAsync(20, "850", "Tab");
        Assert.Equal("9850", await screen.Page.Locator("#scan").InputValueAsync());
        Assert.Equal("BUTTON", await screen.Page.EvaluateAsync<string>("document.activeElement.tagName"));
        await screen.Page.Locator("#scan").FocusAsync();
        await screen.PressAsync(20, "00000", "Tab", isHeld: true);
        Assert.Equal("BUTTON", await screen.Page.EvaluateAsync<string>("document.activeElement.tagName"));
    }

    [Fact]
    public async Task What_was_refused_stands_selected_in_the_box_and_the_next_scan_takes_its_place()
    {
        await using var screen = await MountingAsync();
        await screen.BurstAsync("NOTHING-1");
        Assert.Equal("NOTHING-1", await SelectedAsync(screen));
        var first = await screen.PromptAsync();
        await screen.BurstAsync("NOTHING-1");
        Assert.NotEqual(first, await screen.PromptAsync());
        Assert.Contains("Refused 2 times", await screen.PromptAsync(), StringComparison.Ordinal);

        await screen.PressAsync(Screen.HandMs, "X1");
        Assert.Equal("X1", await screen.Page.Locator("#scan").InputValueAsync());
        await screen.BurstAsync(FilmCode);
        Assert.Contains($"lot {Workshop.Film}", await screen.PromptAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Text_typed_for_one_prompt_is_not_taken_for_another()
    {
        var serial = await workshop.RegisterAsync("capsule");
        var (front, rear) = (await workshop.DiaphragmAsync(900), await workshop.DiaphragmAsync(901));
        await workshop.RecordAsync(
            serial,
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
        await using var screen = await chromium.OpenAsync();
        await screen.AtStationAsync();
        await screen.ScanAsync(serial, "START");
        await screen.PressAsync(Screen.HandMs, "71");
        await using var second = new Screen(await screen.Page.Context.NewPageAsync());
        await second.Page.GotoAsync("/station");
        await second.ScanAsync("70");
        await screen.Page.ReloadAsync();
        Assert.Equal("71", await screen.Page.Locator("#scan").InputValueAsync());

        await screen.PressAsync(Screen.HandMs, "", "Enter");
        await screen.Page.Locator("#st-next:has-text('this window showed something older')").WaitForAsync();

        var history = (await workshop.GetAsync($"parts/{serial}/history?limit=500")).Expect(200).ToString();
        Assert.Contains("\"capacitancePf\"", history, StringComparison.Ordinal);
        Assert.DoesNotContain("\"roomHumidityPct\"", history, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_value_outside_its_limits_has_no_green_mark()
    {
        await using var screen = await MountingAsync();
        await screen.ScanAsync(Workshop.Film, "650");
        Assert.Equal(await ColourAsync(screen, "var(--stop)"), await MarkAsync(screen));
        await screen.ScanAsync("CORRECT", "850", "MISTYPED");
        Assert.Equal(await ColourAsync(screen, "var(--ok)"), await MarkAsync(screen));

        static Task<string> MarkAsync(Screen screen) =>
            screen.Page.EvaluateAsync<string>(
                "getComputedStyle([...document.querySelectorAll('.st-list li')].find(li => li.textContent.includes('Coarse"
                    + " resonance')).querySelector('.mark')).color"
            );
        static Task<string> ColourAsync(Screen screen, string colour) =>
            screen.Page.EvaluateAsync<string>(
                "colour => { const probe = document.createElement('i'); probe.style.color = colour; document.body.append(probe); const"
                    + " found = getComputedStyle(probe).color; probe.remove(); return found; }",
                colour
            );
    }

    private static Task<string> SelectedAsync(Screen screen) =>
        screen.Page.EvaluateAsync<string>(
            "(() => { const box = document.getElementById('scan'); return box.value.slice(box.selectionStart, box.selectionEnd); })()"
        );

    /// <summary>A diaphragm whose film is asked for.</summary>
    private async Task<Screen> MountingAsync()
    {
        var screen = await chromium.OpenAsync();
        var serial = await workshop.RegisterAsync("diaphragm");
        await screen.AtStationAsync();
        await screen.ScanAsync(serial, "START");
        return screen;
    }
}
