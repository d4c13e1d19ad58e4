using System.Net;
using System.Net.Http.Headers;

namespace Traceability.Web.Tests.Http;

public sealed class AnswerHeadersTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData("/api/v1/parts", Workshop.Quality, "no-store")]
    [InlineData("/api/v1/parts?state=zzz", Workshop.Quality, "no-store")]
    [InlineData("/api/v1/parts", null, "no-store")]
    [InlineData("/api/v1/verify/NOTHING", null, "no-cache")]
    [InlineData("/openapi/v1.json", null, "no-cache")]
    [InlineData("/health/ready", null, "no-store")]
    public async Task An_answer_of_the_API_says_who_may_keep_it(string path, string? badge, string keeping)
    {
        using var client = await workshop.ClientAsync(badge);
        using var answer = await client.GetAsync(path);
        Assert.Equal(keeping, answer.Headers.CacheControl?.ToString());
    }

    [Fact]
    public async Task The_document_names_its_server_without_repeating_a_Host_that_somebody_made_up()
    {
        using var client = await workshop.ClientAsync(null);
        using var request = new HttpRequestMessage(HttpMethod.Get, "/openapi/v1.json");
        request.Headers.Host = "elsewhere.example";
        using var answer = await client.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("elsewhere.example", text, StringComparison.Ordinal);
        Assert.Equal(
            "/",
            System.Text.Json.JsonSerializer.Deserialize<System.Text.Json.JsonElement>(text).List("servers").Single().Text("url")
        );
    }

    [Theory]
    [InlineData("GET", "/health/live", 200)]
    [InlineData("GET", "/health/ready", 200)]
    [InlineData("GET", "/api/v1/verify/NOTHING", 404)]
    [InlineData("GET", "/openapi/v1.json", 200)]
    [InlineData("DELETE", "/api/v1/stations/BENCH-1/readings", 405)]
    [InlineData("GET", "/api/v1/stations/BENCH-1/readings", 405)]
    [InlineData("POST", "/api/v1/stations/BENCH-1/readings", 415)]
    [InlineData("POST", "/api/v1/holds", 403)]
    [InlineData("GET", "/api/v1/parts", 403)]
    public async Task A_token_of_an_instrument_opens_what_is_open_and_is_told_the_truth_about_the_rest(
        string method,
        string path,
        int status
    )
    {
        var token = (await workshop.PostAsync("instruments/RB-1/tokens", new { title = "a test" }, Workshop.Lead))
            .Expect(201)
            .Text("token");
        using var client = await workshop.ClientAsync(null);
        using var request = new HttpRequestMessage(new(method), path);
        request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", token);
        if (method == "POST")
        {
            request.Content = path.EndsWith("readings", StringComparison.Ordinal)
                ? new StringContent("900", null, "text/plain")
                : new StringContent("{}", null, "application/json");
        }

        using var answer = await client.SendAsync(request);
        Assert.Equal((HttpStatusCode)status, answer.StatusCode);
    }
}
