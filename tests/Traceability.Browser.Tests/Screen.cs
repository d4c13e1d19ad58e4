using Microsoft.Playwright;
using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

/// <summary>A screen at a bench. It writes down what the browser complains of: a refused script, a file that is not there.</summary>
public sealed class Screen : IAsyncDisposable
{
    /// <summary>Time between two keys of somebody who types without haste. Common practice, no source.</summary>
    public const double HandMs = 200;

    private const double UsualRestMs = 5000;

    private readonly List<string> complaints = [];
    private ICDPSession? devTools;
    private double restMs = UsualRestMs;
    private double pressedAt = DateTimeOffset.UtcNow.ToUnixTimeMilliseconds();

    public Screen(IPage page)
    {
        Page = page;
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                complaints.Add(message.Text);
            }
        };
        page.PageError += (_, error) => complaints.Add(error);
    }

    public IPage Page { get; }

    public IReadOnlyList<string> Complaints => complaints;

    /// <summary>
    /// Types as a scanner does and presses Enter, with nothing but the keyboard, and waits until the station has answered.
    /// </summary>
    public async Task ScanAsync(params string[] texts)
    {
        foreach (var text in texts)
        {
            await BurstAsync(text);
        }
    }

    /// <summary>
    /// Presses keys so many milliseconds apart by the browser's own clock, however slow the machine is: the moment of each press is stated.
    /// A hand needs 80 ms and more, a scanner 5 to 30 ms. Common practice, no source.
    /// </summary>
    public async Task PressAsync(double apartMs, string text, string? last = null, bool isHeld = false)
    {
        devTools ??= await Page.Context.NewCDPSessionAsync(Page);
        pressedAt += restMs;
        restMs = UsualRestMs;
        foreach (var key in text.Select(c => c.ToString()).Concat(last is null ? [] : [last]))
        {
            pressedAt += apartMs;
            var (typed, code) = key switch
            {
                "Enter" => ("\r", 13),
                "Tab" => ("", 9),
                _ => (key, 0),
            };
            foreach (var type in new[] { typed.Length > 0 ? "keyDown" : "rawKeyDown", "keyUp" })
            {
                await devTools.SendAsync(
                    "Input.dispatchKeyEvent",
                    new Dictionary<string, object>
                    {
                        ["type"] = type,
                        ["key"] = key,
                        ["text"] = type == "keyUp" ? "" : typed,
                        ["autoRepeat"] = isHeld,
                        ["windowsVirtualKeyCode"] = code,
                        ["timestamp"] = pressedAt / 1000,
                    }
                );
            }
        }
    }

    /// <summary>How long the keyboard rests before the next press, in the place of some seconds.</summary>
    public void Rest(double milliseconds) => restMs = milliseconds;

    /// <summary>Scans as a scanner does, with a key at the end, and waits until the station has answered.</summary>
    public async Task BurstAsync(string text, string last = "Enter")
    {
        var key = await KeyAsync();
        await PressAsync(20, text, last);
        await AnsweredAsync(key);
    }

    /// <summary>Types once the box has the focus, which without script takes a moment.</summary>
    public async Task TypeInBoxAsync(string text)
    {
        await Page.Locator("#scan:focus").WaitForAsync();
        await Page.Keyboard.TypeAsync(text);
    }

    /// <summary>Presses Enter where that loads the station anew.</summary>
    public async Task EnterAndLoadAsync()
    {
        await Page.RunAndWaitForResponseAsync(
            () => PressAsync(HandMs, "", "Enter"),
            r => r.Request.Method == "GET" && r.Url.EndsWith("/station", StringComparison.Ordinal)
        );
        await Page.WaitForLoadStateAsync();
    }

    /// <summary>The station with somebody signed in and a station scanned.</summary>
    public async Task AtStationAsync(string station = "BENCH-1", string badge = Workshop.Builder)
    {
        await Page.GotoAsync("/station");
        await ScanAsync(badge, Workshop.PinOf(badge), station);
    }

    public Task<string> PromptAsync() => Page.Locator("#st-next").InnerTextAsync();

    public Task<string> TextAsync() => Page.Locator("main").InnerTextAsync();

    /// <summary>Tabs until the element is reached, as somebody without a mouse does.</summary>
    public async Task TabToAsync(string selector)
    {
        for (var i = 0; i < 60; i++)
        {
            if (
                await Page.EvaluateAsync<bool>(
                    "selector => document.activeElement !== null && document.activeElement.matches(selector)",
                    selector
                )
            )
            {
                return;
            }

            await PressAsync(HandMs, "", "Tab");
        }

        Assert.Fail($"{selector} cannot be reached by the Tab key");
    }

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();

    private Task AnsweredAsync(string key) =>
        Page.WaitForFunctionAsync(
            "key => document.querySelector('#st-hidden [name=Key]') && document.querySelector('#st-hidden [name=Key]').value !== key",
            key
        );

    private Task<string> KeyAsync() => Page.Locator("#st-hidden [name=Key]").GetAttributeAsync("value")!;
}
