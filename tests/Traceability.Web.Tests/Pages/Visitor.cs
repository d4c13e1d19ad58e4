using System.Net;
using System.Text.RegularExpressions;

namespace Traceability.Web.Tests.Pages;

/// <summary>A page as it arrived: where it came from in the end, and its text.</summary>
public sealed partial record Screen(HttpStatusCode Status, string Path, string Html, IReadOnlyList<string> Cookies)
{
    /// <summary>What the station says, in words.</summary>
    public string Prompt =>
        Words(
            Html[
                (Html.IndexOf('>', Html.IndexOf("id=\"st-next\"", StringComparison.Ordinal)) + 1)..Html.IndexOf(
                    "id=\"scan-form\"",
                    StringComparison.Ordinal
                )
            ]
        );

    /// <summary>Everything a person can read on it.</summary>
    public string Text => Words(Html[Html.IndexOf("<main", StringComparison.Ordinal)..]);

    public string Token => Field("__RequestVerificationToken");

    /// <summary>The value of the last hidden field of that name.</summary>
    public string Field(string name) =>
        Regex.Matches(Html, $"name=\"{name}\"[^>]*?value=\"([^\"]*)\"").Select(m => m.Groups[1].Value).LastOrDefault() ?? "";

    private static string Words(string html) => WebUtility.HtmlDecode(Blank().Replace(Tag().Replace(html, " "), " ")).Trim();

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blank();
}

/// <summary>Somebody at a browser without script: follows redirects, keeps cookies, sends the forms that the pages hold.</summary>
public sealed class Visitor(HttpClient client)
{
    /// <summary>The page now in front of the visitor.</summary>
    public Screen Now { get; private set; } = new(0, "", "", []);

    public static async Task<Visitor> OpenAsync(Workshop workshop) => new(await workshop.ClientAsync(null));

    public static async Task<Visitor> SignedInAsync(Workshop workshop, string badge = Workshop.Builder)
    {
        var visitor = await OpenAsync(workshop);
        await visitor.GoAsync("/sign-in");
        await visitor.SendAsync("/sign-in", ("Badge", badge), ("Pin", Workshop.PinOf(badge)));
        return visitor;
    }

    public Task<Screen> GoAsync(string path) => TakeAsync(new(HttpMethod.Get, path));

    /// <summary>Sends a form with the token of the page it is on; where that page holds none, of the sign-in page.</summary>
    public async Task<Screen> SendAsync(string path, params (string Name, string Value)[] fields)
    {
        var all = fields.Select(f => KeyValuePair.Create(f.Name, f.Value)).Append(new("__RequestVerificationToken", Now.Token));
        return await TakeAsync(new(HttpMethod.Post, path) { Content = new FormUrlEncodedContent(all) });
    }

    /// <summary>Sends a form as another site would: with the cookies, without the token.</summary>
    public Task<Screen> ForgeAsync(string path, params (string Name, string Value)[] fields) =>
        TakeAsync(
            new(HttpMethod.Post, path) { Content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Name, f.Value))) }
        );

    /// <summary>Types into the scan box and presses Enter.</summary>
    public async Task<Screen> ScanAsync(params string[] texts)
    {
        foreach (var text in texts)
        {
            await (Now.Path == "/station" ? Task.CompletedTask : GoAsync("/station"));
            await ScanInAsync(Now, text);
        }

        return Now;
    }

    /// <summary>Types into the scan box of a page that arrived earlier, as in a second window that was left behind.</summary>
    public Task<Screen> ScanInAsync(Screen window, string text, string? key = null) =>
        SendAsync(
            "/station",
            ("Scan", text),
            ("Key", key ?? Guid.NewGuid().ToString("N")),
            ("Part", window.Field("Part")),
            ("Attempt", window.Field("Attempt")),
            ("Prompt", window.Field("Prompt"))
        );

    public Task<Screen> SendFileAsync(string name, string fileName, string text) => SendFileInAsync(Now, name, fileName, text);

    /// <summary>Sends a file by the form of a page that arrived earlier.</summary>
    public async Task<Screen> SendFileInAsync(Screen window, string name, string fileName, string text)
    {
        var form = new MultipartFormDataContent
        {
            { new StringContent(Now.Token), "__RequestVerificationToken" },
            { new StringContent(window.Field("Part")), "Part" },
            { new StringContent(window.Field("Attempt")), "Attempt" },
            { new StringContent(name), "name" },
            { new StringContent(Guid.NewGuid().ToString("N")), "Key" },
            { new StringContent(text), "file", fileName },
        };
        return await TakeAsync(new(HttpMethod.Post, "/station?handler=File") { Content = form });
    }

    private async Task<Screen> TakeAsync(HttpRequestMessage request)
    {
        request.Headers.Accept.ParseAdd("text/html,application/xhtml+xml,*/*;q=0.8");
        using var answer = await client.SendAsync(request);
        var cookies = answer.Headers.TryGetValues("Set-Cookie", out var set) ? set.ToList() : [];
        return Now = new(
            answer.StatusCode,
            answer.RequestMessage!.RequestUri!.AbsolutePath,
            await answer.Content.ReadAsStringAsync(),
            cookies
        );
    }
}
