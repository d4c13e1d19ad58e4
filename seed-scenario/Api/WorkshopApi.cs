using System.Collections.Concurrent;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Traceability.SeedScenario.Api;

/// <summary>The public HTTP contract as one person after another uses it; a few requests at once, never more.</summary>
internal sealed class WorkshopApi(HttpClient http, IReadOnlyDictionary<string, string> pins, int atOnce = 4) : IDisposable
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };

    private readonly SemaphoreSlim places = new(atOnce);
    private readonly ConcurrentDictionary<string, Lazy<Task<string>>> tokens = new();

    public Task<JsonElement> PostAsync(string badge, string path, object body, CancellationToken cancellation) =>
        SendAsync(badge, HttpMethod.Post, path, JsonContent.Create(body, options: Json), cancellation);

    public Task<JsonElement> PostTextAsync(string badge, string path, string mediaType, string text, CancellationToken cancellation) =>
        SendAsync(badge, HttpMethod.Post, path, new StringContent(text, Encoding.UTF8, mediaType), cancellation);

    public async Task<T> GetAsync<T>(string badge, string path, CancellationToken cancellation) =>
        (await SendAsync(badge, HttpMethod.Get, path, null, cancellation)).Deserialize<T>(Json)!;

    /// <summary>
    /// Somebody who is known but has no PIN yet takes up the one-time code and sets the own PIN; nobody is signed in for it.
    /// </summary>
    public Task TakeUpAsync(string badge, string code, CancellationToken cancellation) =>
        SendAsync(
            new HttpRequestMessage(HttpMethod.Post, "api/v1/pins")
            {
                Content = JsonContent.Create(
                    new
                    {
                        badge,
                        code,
                        newPin = pins[badge],
                    },
                    options: Json
                ),
            },
            badge,
            cancellation
        );

    public string PinOf(string badge) => pins[badge];

    public void Dispose() => places.Dispose();

    private async Task<JsonElement> SendAsync(
        string badge,
        HttpMethod method,
        string path,
        HttpContent? content,
        CancellationToken cancellation
    )
    {
        var token = await tokens.GetOrAdd(badge, b => new(() => SignInAsync(b, cancellation))).Value;
        return await SendAsync(
            new HttpRequestMessage(method, "api/v1/" + path)
            {
                Content = content,
                Headers = { Authorization = new AuthenticationHeaderValue("Bearer", token) },
            },
            badge,
            cancellation
        );
    }

    private async Task<string> SignInAsync(string badge, CancellationToken cancellation)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, "api/v1/sessions")
        {
            Content = JsonContent.Create(new { badge, pin = pins[badge] }, options: Json),
        };
        return (await SendAsync(request, badge, cancellation)).GetProperty("token").GetString()!;
    }

    private async Task<JsonElement> SendAsync(HttpRequestMessage request, string badge, CancellationToken cancellation)
    {
        await places.WaitAsync(cancellation);
        try
        {
            using (request)
            {
                using var response = await http.SendAsync(request, cancellation);
                var text = await response.Content.ReadAsStringAsync(cancellation);
                return response.IsSuccessStatusCode
                    ? JsonSerializer.Deserialize<JsonElement>(text)
                    : throw new SeedException(
                        $"{request.Method} {request.RequestUri} by {badge}: {(int)response.StatusCode} {text}",
                        (int)response.StatusCode
                    );
            }
        }
        finally
        {
            places.Release();
        }
    }
}
