using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace Traceability.Web.Tests.Identity;

/// <summary>
/// Guesses are counted before they are judged, for all instances of the service, so that sending them together wins nothing.
/// </summary>
public sealed class PinGuessTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Of_120_guesses_sent_together_at_one_badge_five_are_judged()
    {
        var statuses = await Task.WhenAll(
            Enumerable.Range(0, 120).Select(i => Task.Run(() => StatusAsync(Workshop.OtherBuilder, $"{9000 + i}")))
        );
        Assert.Equal((5, 115), (statuses.Count(s => s == 401), statuses.Count(s => s == 429)));
    }

    [Fact]
    public async Task Twelve_right_PINs_sent_together_are_no_wrong_ones()
    {
        var statuses = await Task.WhenAll(
            Enumerable.Range(0, 12).Select(_ => Task.Run(() => StatusAsync(Workshop.Builder, Workshop.PinOf(Workshop.Builder))))
        );
        Assert.All(statuses, s => Assert.Equal(200, s));
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(401, await StatusAsync(Workshop.Builder, "9999"));
        }

        Assert.Equal(200, await StatusAsync(Workshop.Builder, Workshop.PinOf(Workshop.Builder)));
        Assert.Equal(401, await StatusAsync(Workshop.Builder, "9999"));
        Assert.Equal(429, await StatusAsync(Workshop.Builder, Workshop.PinOf(Workshop.Builder)));
    }

    [Fact]
    public async Task After_sixty_wrong_PINs_from_one_address_nobody_signs_in_there_but_who_is_signed_in_works_on()
    {
        await using var other = new Neighbour();
        await other.Workshop.InitializeAsync();
        var raised = await RaiseAsync(other.Workshop);
        using var signedIn = other.At("192.0.2.7", await other.TokenAsync(Workshop.Quality));
        using var there = other.At("192.0.2.7");
        using var elsewhere = other.At("192.0.2.8");
        for (var i = 0; i < 60; i++)
        {
            Assert.Equal(
                401,
                (int)(await there.PostAsJsonAsync("/api/v1/sessions", new { badge = $"NOBODY{i}", pin = "9731" })).StatusCode
            );
        }

        var stopped = await there.PostAsJsonAsync(
            "/api/v1/sessions",
            new { badge = Workshop.Builder, pin = Workshop.PinOf(Workshop.Builder) }
        );
        Assert.Equal(429, (int)stopped.StatusCode);
        Assert.InRange(stopped.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 300);
        Assert.Contains("this address", await stopped.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        var decision = new
        {
            kind = "scrap",
            reason = "torn",
            pin = Workshop.PinOf(Workshop.Quality),
        };
        Assert.Equal(201, (int)(await signedIn.PostAsJsonAsync($"/api/v1/nonconformities/{raised}/disposition", decision)).StatusCode);
        Assert.Equal(
            200,
            (int)
                (
                    await elsewhere.PostAsJsonAsync(
                        "/api/v1/sessions",
                        new { badge = Workshop.Builder, pin = Workshop.PinOf(Workshop.Builder) }
                    )
                ).StatusCode
        );
        other.Workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        Assert.Equal(
            200,
            (int)
                (
                    await there.PostAsJsonAsync(
                        "/api/v1/sessions",
                        new { badge = Workshop.Builder, pin = Workshop.PinOf(Workshop.Builder) }
                    )
                ).StatusCode
        );
    }

    [Fact]
    public async Task Of_600_sign_ins_sent_together_none_is_a_fault_of_ours_and_who_must_wait_is_told_how_long()
    {
        using var client = await workshop.ClientAsync(null);
        var answers = await Task.WhenAll(
            Enumerable
                .Range(0, 600)
                .Select(_ =>
                    Task.Run(async () =>
                    {
                        using var answer = await client.PostAsJsonAsync(
                            "/api/v1/sessions",
                            new { badge = Workshop.Importer, pin = Workshop.PinOf(Workshop.Importer) }
                        );
                        return ((int)answer.StatusCode, answer.Headers.RetryAfter?.Delta);
                    })
                )
        );
        Assert.Empty(answers.Select(a => a.Item1).Except([200, 429]));
        Assert.Contains(200, answers.Select(a => a.Item1));
        Assert.All(answers.Where(a => a.Item1 == 429), a => Assert.NotNull(a.Delta));
    }

    [Fact]
    public async Task Who_is_not_signed_in_sends_four_kilobytes_and_no_more()
    {
        using var client = await workshop.ClientAsync(null);
        Assert.Equal(
            401,
            (int)(await client.PostAsJsonAsync("/api/v1/sessions", new { badge = "NOBODY", pin = new string('1', 3900) })).StatusCode
        );
        foreach (var path in new[] { "/api/v1/sessions", "/api/v1/first-account", "/sign-in", "/station" })
        {
            using var answer = await client.PostAsync(
                new Uri(path, UriKind.Relative),
                new StringContent(
                    "{\"badge\":\"" + new string('N', 4096) + "\",\"pin\":\"1\"}",
                    System.Text.Encoding.UTF8,
                    "application/json"
                )
            );
            Assert.Equal((path, 413), (path, (int)answer.StatusCode));
        }

        Assert.Equal(
            200,
            (int)
                (
                    await client.PostAsync(
                        "/api/v1/verify",
                        new ByteArrayContent(new byte[1_000_000]) { Headers = { ContentType = new("application/pdf") } }
                    )
                ).StatusCode
        );
    }

    private async Task<int> StatusAsync(string badge, string pin) =>
        (int)(await workshop.PostAsync("sessions", new { badge, pin }, null)).Status;

    private static async Task<Guid> RaiseAsync(Workshop w) =>
        (await w.PostAsync($"parts/{await w.MountAsync()}/nonconformities", new { code = "torn", description = "torn" })).Expect(201).Id();

    /// <summary>A workshop of its own whose callers come from stated addresses.</summary>
    private sealed class Neighbour : IAsyncDisposable
    {
        public Workshop Workshop { get; } = new();

        public HttpClient At(string address, string? token = null)
        {
            var server = (TestServer)Workshop.Services.GetRequiredService<IServer>();
            var client = new HttpClient(
                server.CreateHandler(context => context.Connection.RemoteIpAddress = System.Net.IPAddress.Parse(address))
            )
            {
                BaseAddress = new("http://localhost"),
            };
            client.DefaultRequestHeaders.Authorization = token is null ? null : new("Bearer", token);
            return client;
        }

        public async Task<string> TokenAsync(string badge) =>
            JsonSerializer
                .Deserialize<JsonElement>((await Workshop.PostAsync("sessions", new { badge, pin = Workshop.PinOf(badge) }, null)).Body)
                .Text("token");

        public async ValueTask DisposeAsync() => await Workshop.DisposeAsync();
    }
}
