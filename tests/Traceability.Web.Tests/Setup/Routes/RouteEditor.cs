using System.Net;
using System.Text.RegularExpressions;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Setup.Routes;

/// <summary>
/// The editor of routes as a browser without script uses it: fields are filled in, a button is pressed, the next page is
/// read.
/// </summary>
internal sealed partial class RouteEditor
{
    private readonly DeskClient client;
    private List<KeyValuePair<string, string>> fields = [];

    private RouteEditor(DeskClient client) => this.client = client;

    /// <summary>The page as it is now.</summary>
    public DeskClient.Sheet Page { get; private set; } = null!;

    /// <summary>The whole draft as the page carries it.</summary>
    public string Text => Value("text");

    /// <summary>Opens the editor for somebody who signs in first.</summary>
    public static async Task<RouteEditor> OpenAsync(Workshop w, string badge, string path)
    {
        var editor = new RouteEditor(await DeskClient.SignInAsync(w, badge));
        editor.Read((await editor.client.GetAsync(path)).Expect(200));
        return editor;
    }

    /// <summary>What stands in a field; "" when it is not there.</summary>
    public string Value(string name) => fields.LastOrDefault(f => f.Key == name).Value ?? "";

    /// <summary>Fills in a field that is there.</summary>
    public RouteEditor Type(string name, string value)
    {
        Assert.Contains(fields, f => f.Key == name);
        fields = [.. fields.Where(f => f.Key != name), new(name, value)];
        return this;
    }

    /// <summary>Presses a button.</summary>
    public async Task<RouteEditor> PressAsync(string act)
    {
        Assert.Contains($"value=\"{act}\"", Page.Html, StringComparison.Ordinal);
        Read(await client.PostAsync(Page.Path, [.. fields, new("act", act)]));
        return this;
    }

    private void Read(DeskClient.Sheet page)
    {
        Page = page;
        var form =
            Forms().Matches(Page.Html).Select(m => m.Value).FirstOrDefault(f => f.Contains("value=\"edit\"", StringComparison.Ordinal))
            ?? "";
        fields =
        [
            .. Inputs()
                .Matches(form)
                .Select(m => m.Value)
                .Where(i =>
                    Attribute(i, "name") != ""
                    && (!i.Contains("type=\"checkbox\"", StringComparison.Ordinal) || i.Contains("checked", StringComparison.Ordinal))
                )
                .Select(i => new KeyValuePair<string, string>(Attribute(i, "name"), Attribute(i, "value"))),
            .. Areas()
                .Matches(form)
                .Select(m => new KeyValuePair<string, string>(
                    Attribute(m.Value, "name"),
                    WebUtility.HtmlDecode(m.Groups[1].Value).TrimStart('\n')
                )),
            .. Selects().Matches(form).Select(m => new KeyValuePair<string, string>(Attribute(m.Value, "name"), Chosen(m.Groups[1].Value))),
        ];
    }

    private static string Chosen(string options) =>
        (Options().Matches(options).FirstOrDefault(o => o.Value.Contains("selected", StringComparison.Ordinal)) ?? Options().Match(options))
            is { Success: true } o
            ? Attribute(o.Value, "value")
            : "";

    private static string Attribute(string tag, string name) =>
        WebUtility.HtmlDecode(Regex.Match(tag, $"\\b{name}=\"([^\"]*)\"").Groups[1].Value);

    [GeneratedRegex("<form.*?</form>", RegexOptions.Singleline)]
    private static partial Regex Forms();

    [GeneratedRegex("<input[^>]*>")]
    private static partial Regex Inputs();

    [GeneratedRegex("<textarea[^>]*>(.*?)</textarea>", RegexOptions.Singleline)]
    private static partial Regex Areas();

    [GeneratedRegex("<select[^>]*>(.*?)</select>", RegexOptions.Singleline)]
    private static partial Regex Selects();

    [GeneratedRegex("<option[^>]*>")]
    private static partial Regex Options();
}
