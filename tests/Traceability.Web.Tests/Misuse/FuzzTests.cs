using System.Text;
using System.Text.Json.Nodes;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Misuse;

/// <summary>What the OpenAPI document lists, called by somebody who gets everything wrong: never a 500.</summary>
public sealed class FuzzTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string[] NastyBodies =
    [
        "",
        " ",
        "null",
        "[]",
        "{}",
        "7",
        "\"x\"",
        "true",
        "{",
        "{\"a\":",
        "[null]",
        "[{}]",
        "[[]]",
        "{\"\":\"\"}",
        "{\"__proto__\":{}}",
        "\u0000",
        "nul",
        "{\"a\":1,\"a\":2}",
        new string('[', 200),
        string.Concat(Enumerable.Repeat("{\"a\":", 100)) + "1" + new string('}', 100),
        "\uFEFF{}",
        "{} {}",
        "'x'",
        "<x/>",
        "a=b&c=d",
    ];

    private static readonly string[] NastyValues =
    [
        "null",
        "\"\"",
        "\" \"",
        "0",
        "-1",
        "1e400",
        "1e-400",
        "99999999999999999999999999999",
        "0.1",
        "true",
        "[]",
        "{}",
        "[null]",
        "[{}]",
        "[[]]",
        "[\"x\",\"x\"]",
        "{\"a\":1}",
        "\"\\u0000\"",
        "\"\\ud800\"",
        "\"NaN\"",
        "\"'; drop table parts; --\"",
        "\"../../etc/passwd\"",
        "\"%s%n{0}\"",
        "\"\u202Eabc\"",
        "\"x\u0301\uD83C\uDF99\"",
        "\"9999-12-31T23:59:59.9999999Z\"",
        "\"0001-01-01T00:00:00Z\"",
        "\"0001-01-01T00:00:00+14:00\"",
        "\"2026-01-05\"",
        "\"FILM-1\"",
        "\"BENCH-1\"",
        $"\"{new string('x', 4000)}\"",
        $"\"{new string('x', 5000)}\"",
    ];

    [Fact]
    public async Task Bodies_that_are_nonsense_never_make_the_service_fail()
    {
        var posts = (await ApiDescription.ReadAsync(workshop)).Posts;
        Assert.True(posts.Count > 25, $"only {posts.Count} POST operations are in the document");
        var addresses = await Addresses.OfAsync(workshop);
        await EachAsync(from post in posts from body in NastyBodies select (addresses.Of(post.Path), post.MediaType, body));
    }

    [Fact]
    public async Task One_wrong_member_in_an_otherwise_good_body_never_makes_the_service_fail()
    {
        var contract = await ApiDescription.ReadAsync(workshop);
        var addresses = await Addresses.OfAsync(workshop);
        await EachAsync(
            from post in contract.Posts
            where contract.Example(post.Schema) is JsonObject
            from body in Variations((JsonObject)contract.Example(post.Schema)!)
            select (addresses.Of(post.Path), post.MediaType, body)
        );
    }

    [Fact]
    public async Task An_unknown_member_is_refused_everywhere()
    {
        var contract = await ApiDescription.ReadAsync(workshop);
        var addresses = await Addresses.OfAsync(workshop);
        foreach (var post in contract.Posts.Where(p => contract.Example(p.Schema) is JsonObject))
        {
            var body = (JsonObject)contract.Example(post.Schema)!;
            body["unheardOf"] = 1;
            var problem = (await SendAsync(addresses.Of(post.Path), post.MediaType, body.ToJsonString(), BadgeFor(post.Path))).Problem(400);
            Assert.Contains("unheardOf", problem, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Another_type_of_content_is_refused_where_json_is_asked_for()
    {
        var addresses = await Addresses.OfAsync(workshop);
        foreach (
            var post in (await ApiDescription.ReadAsync(workshop)).Posts.Where(p =>
                p is { MediaType: "application/json", BodyRequired: true }
            )
        )
        {
            (await SendAsync(addresses.Of(post.Path), "text/plain", "{}", BadgeFor(post.Path))).Expect(415);
        }
    }

    private static IEnumerable<string> Variations(JsonObject good)
    {
        foreach (var member in good.Select(m => m.Key).ToList())
        {
            var without = good.DeepClone().AsObject();
            without.Remove(member);
            yield return without.ToJsonString();
            foreach (var value in NastyValues)
            {
                // Put in as text: some of these are not what a JSON library would write.
                var with = good.DeepClone().AsObject();
                with[member] = "@here@";
                yield return with.ToJsonString().Replace("\"@here@\"", value, StringComparison.Ordinal);
            }
        }
    }

    private async Task EachAsync(IEnumerable<(Uri Address, string MediaType, string Body)> calls)
    {
        var failed = new List<string>();
        await Parallel.ForEachAsync(
            calls,
            new ParallelOptions { MaxDegreeOfParallelism = 4 },
            async (call, _) =>
            {
                var reply = await SendAsync(call.Address, call.MediaType, call.Body, BadgeFor(call.Address.ToString()));
                if ((int)reply.Status >= 500 || ((int)reply.Status >= 400 && !reply.Json.Has("requestId")))
                {
                    lock (failed)
                    {
                        failed.Add(
                            $"{(int)reply.Status} {call.Address} {call.Body[..Math.Min(300, call.Body.Length)]}:"
                                + $" {reply.Body[..Math.Min(200, reply.Body.Length)]}"
                        );
                    }
                }
            }
        );
        Assert.True(failed.Count == 0, $"{failed.Count} failed:\n{string.Join('\n', failed.Take(40))}");
        await using var health = new HealthCheck(workshop);
        await health.PassAsync();
    }

    private Task<Reply> SendAsync(Uri address, string mediaType, string body, string? badge)
    {
        var content = new ByteArrayContent(Encoding.UTF8.GetBytes(body));
        content.Headers.ContentType = new(mediaType.Length == 0 ? "application/json" : mediaType);
        return workshop.SendAsync(new(HttpMethod.Post, address) { Content = content }, badge);
    }

    /// <summary>Somebody who may call it.</summary>
    private static string? BadgeFor(string path) =>
        path switch
        {
            _ when path.EndsWith("/sessions", StringComparison.Ordinal)
                    || path.EndsWith("/pins", StringComparison.Ordinal)
                    || path.EndsWith("/first-account", StringComparison.Ordinal) => null,
            _ when path.Contains("/people", StringComparison.Ordinal)
                    || path.Contains("/stations", StringComparison.Ordinal) && !path.EndsWith("/readings", StringComparison.Ordinal)
                    || path.Contains("/routes", StringComparison.Ordinal)
                    || path.EndsWith("/instruments", StringComparison.Ordinal)
                    || path.EndsWith("/carriers", StringComparison.Ordinal)
                    || path.Contains("/workshop", StringComparison.Ordinal)
                    || path.Contains("/{sort}", StringComparison.Ordinal)
                    || path.Contains("/tokens", StringComparison.Ordinal) => Workshop.Lead,
            _ when path.Contains("/returns", StringComparison.Ordinal) => Workshop.ServiceDesk,
            _ => Workshop.Importer,
        };
}
