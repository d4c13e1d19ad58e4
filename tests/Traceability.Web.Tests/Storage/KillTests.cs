using System.Collections.Concurrent;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Web.Hosting;

namespace Traceability.Web.Tests.Storage;

[Trait("Category", "Storage")]
public sealed class KillTests(KillTests.Now now) : IClassFixture<KillTests.Now>
{
    private const int Kills = 3;
    private const int Benches = 6;
    private const int PartsInARound = 60;
    private const int AnswersBeforeTheKill = 20;

    private readonly Workshop workshop = now.Workshop;

    [Fact]
    public async Task A_service_killed_while_it_writes_leaves_all_or_nothing_and_loses_nothing_that_it_answered()
    {
        var cutOff = 0;
        for (var round = 0; round < Kills; round++)
        {
            var serials = new List<string>();
            for (var i = 0; i < PartsInARound; i++)
            {
                serials.Add(await workshop.RegisterAsync("diaphragm"));
            }

            var (answered, asked) = await RecordUntilKilledAsync(serials);
            Assert.InRange(answered.Count, AnswersBeforeTheKill, PartsInARound - 1);
            await AllOrNothingAsync(serials, answered);
            cutOff += asked.Except(answered).Count();
            foreach (var serial in asked)
            {
                // Whoever got no answer asks again with the same key: it is written once, whether it had been or not.
                (await workshop.PostAsync($"parts/{serial}/records", Mount, key: serial)).Expect(201);
            }

            await AllOrNothingAsync(serials, asked);
        }

        Assert.True(cutOff > 0, "no request was under way when the service was killed");
        await using var health = new HealthCheck(workshop);
        await health.PassAsync();
    }

    [Fact]
    public async Task A_service_that_is_asked_to_end_ends_well()
    {
        var data = Directory.CreateTempSubdirectory("traceability-kill-test-");
        using (var service = await StartAsync(data))
        {
            Assert.Equal(0, await service.StopAsync());
        }

        data.Delete(recursive: true);
    }

    private static object Mount =>
        new
        {
            stage = "mount",
            station = "BENCH-1",
            readings = new[] { new { characteristic = "coarseHz", value = 850 } },
            fittings = new[] { new { position = "film", lot = Workshop.Film } },
        };

    private async Task<(IReadOnlyCollection<string> Answered, IReadOnlyCollection<string> Asked)> RecordUntilKilledAsync(
        List<string> serials
    )
    {
        var data = Directory.CreateTempSubdirectory("traceability-kill-test-");
        using var service = await StartAsync(data);
        using var signedIn = await workshop.ClientAsync(Workshop.Builder);
        service.Client.DefaultRequestHeaders.Authorization = signedIn.DefaultRequestHeaders.Authorization;
        var (answered, asked, waiting) = (new ConcurrentBag<string>(), new ConcurrentBag<string>(), new ConcurrentQueue<string>(serials));
        var enough = new TaskCompletionSource();
        var benches = Enumerable
            .Range(0, Benches)
            .Select(_ =>
                Task.Run(async () =>
                {
                    while (waiting.TryDequeue(out var serial))
                    {
                        asked.Add(serial);
                        if (!await RecordAsync(service.Client, serial))
                        {
                            return;
                        }

                        answered.Add(serial);
                        if (answered.Count >= AnswersBeforeTheKill)
                        {
                            enough.TrySetResult();
                        }
                    }
                })
            )
            .ToArray();
        await Task.WhenAny(enough.Task, Task.WhenAll(benches));
        service.Kill();
        await Task.WhenAll(benches);
        data.Delete(recursive: true);
        return (answered, asked);
    }

    private Task<ServiceProcess> StartAsync(DirectoryInfo data) =>
        ServiceProcess.StartAsync(
            new Dictionary<string, string>
            {
                ["ConnectionStrings__Traceability"] = workshop.Services.GetRequiredService<WorkshopDatabase>().OwnerConnectionString,
                ["TRACEABILITY_DATA"] = data.FullName,
            }
        );

    /// <summary>True when the service answered that it is written; false when it died.</summary>
    private static async Task<bool> RecordAsync(HttpClient client, string serial)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri($"/api/v1/parts/{serial}/records", UriKind.Relative))
        {
            Content = JsonContent.Create(Mount),
        };
        request.Headers.Add("Idempotency-Key", serial);
        try
        {
            using var answer = await client.SendAsync(request);
            Assert.Equal(201, (int)answer.StatusCode);
            return (await answer.Content.ReadFromJsonAsync<JsonElement>()).Text("verdict") == "pass";
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private async Task AllOrNothingAsync(IEnumerable<string> serials, IReadOnlyCollection<string> written)
    {
        await using var health = new HealthCheck(workshop);
        foreach (var serial in serials)
        {
            var dossier = (await health.Dossiers.LoadAsync((await health.Dossiers.FindAsync(serial, default))!.Value, default))!;
            var whole = dossier.Attempts is [{ Passed: true, Readings: [_], Fittings: [_], Ending: not null }];
            Assert.True(whole || dossier.Attempts.Count == 0, $"{serial} is half written");
            Assert.True(whole || !written.Contains(serial), $"{serial} was answered and is lost");
        }
    }

    /// <summary>The service that is killed goes by the real clock.</summary>
    public sealed class Now : IAsyncLifetime
    {
        public Workshop Workshop { get; } = new() { AtThisHour = true };

        public Task InitializeAsync() => Workshop.InitializeAsync();

        public Task DisposeAsync() => Workshop.DisposeAsync();
    }
}
