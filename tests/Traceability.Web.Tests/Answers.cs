using System.Net;
using System.Text.Json;

namespace Traceability.Web.Tests;

/// <summary>An answer of the service: its status and its JSON.</summary>
public sealed record Reply(HttpStatusCode Status, JsonElement Json, string Body)
{
    /// <summary>The answer, when it has the status that the test expects; else the test fails with what the service said.</summary>
    public JsonElement Expect(int status)
    {
        Assert.True((int)Status == status, $"expected {status}, got {(int)Status}: {Body}");
        return Json;
    }

    /// <summary>What the service says is wrong.</summary>
    public string Problem(int status) => Expect(status).Text("detail");
}

/// <summary>Short words for looking into JSON; members are parted by points.</summary>
public static class Looking
{
    public static JsonElement At(this JsonElement json, string path) => path.Split('.').Aggregate(json, (j, name) => j.GetProperty(name));

    /// <summary>True when the member is there and has a value.</summary>
    public static bool Has(this JsonElement json, string member) =>
        json.TryGetProperty(member, out var value) && value.ValueKind != JsonValueKind.Null;

    public static string Text(this JsonElement json, string path) => json.At(path).ToString();

    public static Guid Id(this JsonElement json, string path = "id") => json.At(path).GetGuid();

    public static IReadOnlyList<JsonElement> List(this JsonElement json, string path = "items") => [.. json.At(path).EnumerateArray()];

    public static IReadOnlyList<string> Texts(this JsonElement json, string list, string member) =>
        [.. json.List(list).Select(i => i.Text(member))];
}
