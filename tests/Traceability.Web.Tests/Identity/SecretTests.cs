using System.Text;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Identity;

/// <summary>No PIN, code or token is kept with a key: not in the hash of what was asked, not in the answer.</summary>
public sealed class SecretTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task The_PIN_is_no_part_of_the_hash_that_is_kept_with_the_key()
    {
        var raised = await RaiseAsync();
        var pin = Workshop.PinOf(Workshop.Quality);
        var first = (await DecideAsync(raised, "key-hash", $$"""{"kind":"scrap","reason":"torn","pin":"{{pin}}"}""")).Expect(201).Id();

        // The same PIN in other letters: were it hashed, this would be another command.
        var escaped = string.Concat(pin.Select(c => $"\\u{(int)c:x4}"));
        Assert.Equal(
            first,
            (await DecideAsync(raised, "key-hash", $$"""{"kind":"scrap","reason":"torn","pin":"{{escaped}}"}""")).Expect(201).Id()
        );
        (await DecideAsync(raised, "key-hash", $$"""{"kind":"scrap","reason":"bent","pin":"{{pin}}"}""")).Expect(422);
    }

    [Fact]
    public async Task A_kept_answer_is_given_to_the_right_PIN_only()
    {
        var raised = await RaiseAsync();
        (
            await DecideAsync(raised, "key-prove", $$"""{"kind":"scrap","reason":"torn","pin":"{{Workshop.PinOf(Workshop.Quality)}}"}""")
        ).Expect(201);
        (await DecideAsync(raised, "key-prove", """{"kind":"scrap","reason":"torn","pin":"9731"}""")).Expect(403);
    }

    [Fact]
    public async Task A_token_that_was_shown_is_not_shown_again()
    {
        var first = await workshop.PostAsync("instruments/RB-1/tokens", new { title = "bench" }, Workshop.Lead, "key-token");
        Assert.NotEmpty(first.Expect(201).Text("token"));
        var again = await workshop.PostAsync("instruments/RB-1/tokens", new { title = "bench" }, Workshop.Lead, "key-token");
        Assert.Contains("shown once", again.Problem(409), StringComparison.Ordinal);
        Assert.EndsWith("/problems/secret-already-shown", again.Json.Text("type"), StringComparison.Ordinal);
        await using var door = BackDoor.Of(workshop);
        Assert.Equal("", await door.AskAsync<string>("select body from idempotent_answers where key = 'key-token'"));
    }

    [Fact]
    public async Task Two_callers_may_count_their_keys_alike()
    {
        Task<Reply> Register(string badge) => workshop.PostAsync("parts", new { kind = "diaphragm", model = Workshop.Model }, badge, "1");
        var (one, other) = (
            (await Register(Workshop.Builder)).Expect(201).Text("serial"),
            (await Register(Workshop.OtherBuilder)).Expect(201).Text("serial")
        );
        Assert.NotEqual(one, other);
        Assert.Equal(one, (await Register(Workshop.Builder)).Expect(201).Text("serial"));
    }

    [Fact]
    public async Task Two_tokens_of_one_instrument_are_two_callers()
    {
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        var attempt = await workshop.OpenAsync(serial, "verify", "BENCH-2", "RB-1");
        var ids = new List<Guid>();
        foreach (var title in new[] { "left", "right" })
        {
            var token = (await workshop.PostAsync("instruments/RB-1/tokens", new { title }, Workshop.Lead)).Expect(201).Text("token");
            var request = new HttpRequestMessage(HttpMethod.Post, $"/api/v1/attempts/{attempt}/readings")
            {
                Content = new StringContent("""{"characteristic":"ringHz","value":900}""", Encoding.UTF8, "application/json"),
            };
            request.Headers.Authorization = new("Bearer", token);
            request.Headers.Add("Idempotency-Key", "1");
            var taken = await workshop.SendAsync(request, null);
            ids.Add(taken.Status == System.Net.HttpStatusCode.Created ? taken.Json.List("readings")[0].Id() : Guid.NewGuid());
            Assert.NotEqual(422, (int)taken.Status);
        }

        Assert.Equal(2, ids.Distinct().Count());
    }

    private async Task<Guid> RaiseAsync() =>
        (await workshop.PostAsync($"parts/{await workshop.MountAsync()}/nonconformities", new { code = "torn", description = "torn" }))
            .Expect(201)
            .Id();

    private Task<Reply> DecideAsync(Guid id, string key, string body) =>
        workshop.PostAsync(
            $"nonconformities/{id}/disposition",
            new StringContent(body, Encoding.UTF8, "application/json"),
            Workshop.Quality,
            key
        );
}
