using Microsoft.Playwright;
using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

/// <summary>A screen at a bench. It writes down what the browser complains of: a refused script, a file that is not there.</summary>
public sealed class Screen : IAsyncDisposable
{
    private readonly List<string> complaints = [];

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

    /// <summary>Types and presses Enter, with nothing but the keyboard, and waits until the station has answered.</summary>
    public async Task ScanAsync(params string[] texts)
    {
        foreach (var text in texts)
        {
            var key = await KeyAsync();
            await Page.Keyboard.TypeAsync(text);
            await Page.Keyboard.PressAsync("Enter");
            await Page.WaitForFunctionAsync("key => document.querySelector('#st-hidden [name=Key]') && document.querySelector('#st-hidden [name=Key]').value !== key", key);
        }
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
        await Page.RunAndWaitForResponseAsync(() => Page.Keyboard.PressAsync("Enter"), r => r.Request.Method == "GET" && r.Url.EndsWith("/station", StringComparison.Ordinal));
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
            if (await Page.EvaluateAsync<bool>("selector => document.activeElement !== null && document.activeElement.matches(selector)", selector))
            {
                return;
            }

            await Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"{selector} cannot be reached by the Tab key");
    }

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();

    private Task<string> KeyAsync() => Page.Locator("#st-hidden [name=Key]").GetAttributeAsync("value")!;
}
