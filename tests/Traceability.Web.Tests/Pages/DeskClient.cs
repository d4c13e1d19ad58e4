using System.Net;
using System.Text.RegularExpressions;

namespace Traceability.Web.Tests.Pages;

/// <summary>A person at a browser without script: signed in by the sign-in page, reading pages and sending their forms.</summary>
public sealed partial class DeskClient(HttpClient client)
{
    /// <summary>A page as it came: its status, where it ended up, its HTML.</summary>
    public sealed record Sheet(HttpStatusCode Status, string Path, string Html)
    {
        /// <summary>The words of the page, without its tags.</summary>
        public string Words => WebUtility.HtmlDecode(Blanks().Replace(Tags().Replace(Html, " "), " "));

        /// <summary>The page, when it has the status that the test expects.</summary>
        public Sheet Expect(int status)
        {
            Assert.True((int)Status == status, $"expected {status}, got {(int)Status} at {Path}: {Words}");
            return this;
        }

        /// <summary>The form with that name, as its fields would be sent; an empty name stands for the page's only named form.</summary>
        public Dictionary<string, string> Form(string name)
        {
            var form = Forms()
                .Matches(Html)
                .Select(m => m.Value)
                .Single(f => f.Contains($"name=\"_Form\" value=\"{name}\"", StringComparison.Ordinal));
            return Hidden().Matches(form).ToDictionary(m => m.Groups["name"].Value, m => WebUtility.HtmlDecode(m.Groups["value"].Value));
        }

        /// <summary>Where that form goes.</summary>
        public string ActionOf(string name)
        {
            var form = Forms()
                .Matches(Html)
                .Select(m => m.Value)
                .Single(f => f.Contains($"name=\"_Form\" value=\"{name}\"", StringComparison.Ordinal));
            return Action().Match(form) is { Success: true } action ? WebUtility.HtmlDecode(action.Groups["to"].Value) : Path;
        }
    }

    /// <summary>Signs in at the sign-in page.</summary>
    public static async Task<DeskClient> SignInAsync(Workshop workshop, string badge)
    {
        var client = await workshop.ClientAsync(null);
        client.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        var desk = new DeskClient(client);
        var page = await desk.GetAsync("/sign-in");
        var token = Hidden().Matches(page.Html).Single(m => m.Groups["name"].Value == "__RequestVerificationToken").Groups["value"].Value;
        (
            await desk.PostAsync(
                "/sign-in",
                new Dictionary<string, string>()
                {
                    ["Badge"] = badge,
                    ["Pin"] = Workshop.PinOf(badge),
                    ["__RequestVerificationToken"] = token,
                    ["ReturnTo"] = "/parts",
                }
            )
        ).Expect(200);
        return desk;
    }

    public async Task<Sheet> GetAsync(string path)
    {
        using var answer = await client.GetAsync(path);
        return await ReadAsync(answer);
    }

    public async Task<Sheet> PostAsync(string path, IEnumerable<KeyValuePair<string, string>> fields)
    {
        using var content = new FormUrlEncodedContent(fields);
        using var answer = await client.PostAsync(path, content);
        return await ReadAsync(answer);
    }

    /// <summary>Fills in the form of that name on the page and sends it.</summary>
    public async Task<Sheet> SendAsync(string path, string form, params (string Name, string Value)[] typed) =>
        await SendAsync((await GetAsync(path)).Expect(200), form, typed);

    /// <summary>Fills in the form of that name on a page that is there already and sends it.</summary>
    public Task<Sheet> SendAsync(Sheet page, string form, params (string Name, string Value)[] typed)
    {
        var fields = page.Form(form);
        foreach (var (name, value) in typed)
        {
            fields[name] = value;
        }

        return PostAsync(page.ActionOf(form), fields);
    }

    /// <summary>Sends a file by the page's own form.</summary>
    public async Task<Sheet> UploadAsync(string path, string field, byte[] bytes)
    {
        var token = Hidden()
            .Matches((await GetAsync(path)).Html)
            .First(m => m.Groups["name"].Value == "__RequestVerificationToken")
            .Groups["value"]
            .Value;
        using var content = new MultipartFormDataContent
        {
            { new StringContent(token), "__RequestVerificationToken" },
            { new ByteArrayContent(bytes), field, "certificate.pdf" },
        };
        using var answer = await client.PostAsync(path, content);
        return await ReadAsync(answer);
    }

    private static async Task<Sheet> ReadAsync(HttpResponseMessage answer) =>
        new(answer.StatusCode, answer.RequestMessage!.RequestUri!.PathAndQuery, await answer.Content.ReadAsStringAsync());

    [GeneratedRegex("<form.*?</form>", RegexOptions.Singleline)]
    private static partial Regex Forms();

    [GeneratedRegex(
        """<input[^>]*?(type="hidden"[^>]*?)?name="(?<name>[^"]+)"[^>]*?type="hidden"[^>]*?value="(?<value>[^"]*)"|"""
            + """<input[^>]*?type="hidden"[^>]*?name="(?<name>[^"]+)"[^>]*?value="(?<value>[^"]*)"""
    )]
    private static partial Regex Hidden();

    [GeneratedRegex("<form[^>]*?action=\"(?<to>[^\"]*)\"")]
    private static partial Regex Action();

    [GeneratedRegex("<(script|style|svg).*?</\\1>|<[^>]+>", RegexOptions.Singleline)]
    private static partial Regex Tags();

    [GeneratedRegex("\\s+")]
    private static partial Regex Blanks();
}
