using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Misuse;

/// <summary>What the OpenAPI document lists, called by strangers, by other methods and at addresses that are nonsense.</summary>
public sealed class AddressMisuseTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Nothing_but_signing_in_the_own_PIN_and_the_first_account_is_open_to_strangers()
    {
        var addresses = await Addresses.OfAsync(workshop);
        string[] open = ["/api/v1/sessions", "/api/v1/first-account", "/api/v1/pins", "/api/v1/verify", "/health/live", "/health/ready"];
        var operations = (await ApiDescription.ReadAsync(workshop))
            .Operations.Where(o => o.Path.StartsWith("/api/", StringComparison.Ordinal))
            .ToList();
        foreach (
            var (path, method) in operations.Where(o =>
                !open.Any(p => o.Path == p || o.Path.StartsWith("/api/v1/verify/", StringComparison.Ordinal))
            )
        )
        {
            using var request = new HttpRequestMessage(new(method.ToUpperInvariant()), addresses.Of(path));
            (await workshop.SendAsync(request, null)).Expect(401);
        }
    }

    [Theory]
    [InlineData("PUT")]
    [InlineData("PATCH")]
    [InlineData("DELETE")]
    public async Task A_method_that_an_address_does_not_have_is_refused(string method)
    {
        var addresses = await Addresses.OfAsync(workshop);
        await using var door = BackDoor.Of(workshop);
        await door.UntouchedByAsync(async () =>
        {
            var operations = (await ApiDescription.ReadAsync(workshop)).Operations.ToLookup(o => o.Path, o => o.Method.ToUpperInvariant());
            foreach (
                var path in operations
                    .Where(o => o.Key.StartsWith("/api/", StringComparison.Ordinal) && !o.Contains(method))
                    .Select(o => o.Key)
            )
            {
                using var request = new HttpRequestMessage(new(method), addresses.Of(path));
                (await workshop.SendAsync(request, Workshop.Quality)).Expect(405);
            }
        });
    }

    [Theory]
    [InlineData("parts/%FF%FE")]
    [InlineData("parts/..%2F..%2Fetc")]
    [InlineData("attempts/not-an-id")]
    [InlineData("attempts/00000000-0000-0000-0000-000000000000")]
    [InlineData("parts?limit=0")]
    [InlineData("parts?limit=501")]
    [InlineData("parts?limit=x")]
    [InlineData("parts?cursor=zz")]
    [InlineData("parts?cursor=00")]
    [InlineData("parts?free=perhaps")]
    [InlineData("holds?open=perhaps")]
    [InlineData("lots?state=%00")]
    [InlineData("lots?kind=%00")]
    [InlineData("lots/FILM-1/where-used?at=yesterday")]
    [InlineData("lots/FILM-1/where-used?at=9999-12-31T23:59:59%2B00:00")]
    [InlineData("search?q=%00")]
    [InlineData("nowhere")]
    public async Task An_address_that_is_nonsense_is_a_clients_mistake(string path)
    {
        var reply = await workshop.GetAsync(path);
        Assert.InRange((int)reply.Status, 200, 499);
    }

    [Fact]
    public async Task Very_long_addresses_and_headers_are_a_clients_mistake()
    {
        Assert.InRange((int)(await workshop.GetAsync($"parts/{new string('x', 5000)}")).Status, 400, 499);
        Assert.InRange((int)(await workshop.GetAsync($"lots?kind={new string('x', 5000)}")).Status, 200, 499);
        Assert.InRange(
            (int)(await workshop.PostAsync($"parts/{new string('x', 3000)}/records", new { stage = "mount", station = "BENCH-1" })).Status,
            400,
            499
        );
    }
}
