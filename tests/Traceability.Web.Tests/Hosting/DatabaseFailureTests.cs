using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Hosting;

/// <summary>A database that fails is never the client's fault, and never a 500: whoever asked is told to come again.</summary>
[Trait("Category", "Storage")]
public sealed class DatabaseFailureTests : IAsyncLifetime
{
    private const string EndsEverySession =
        "select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()";
    private const string EndsWaiters =
        "select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'";
    private const string Waiters = "select count(*) from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'";

    private readonly Workshop workshop = new();

    /// <summary>Signed in before anything fails.</summary>
    public async Task InitializeAsync()
    {
        await workshop.InitializeAsync();
        (await workshop.GetAsync("parts")).Expect(200);
        (await workshop.GetAsync("parts", Workshop.Builder)).Expect(200);
    }

    public Task DisposeAsync() => workshop.DisposeAsync();

    [Fact]
    public async Task A_command_whose_database_session_is_ended_is_told_to_come_again_and_is_then_written_once()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var mount = new
        {
            stage = "mount",
            station = "BENCH-1",
            readings = new[] { new { characteristic = "coarseHz", value = 850 } },
            fittings = new[] { new { position = "film", lot = Workshop.Film } },
        };
        var cutOff = await CutOffAsync(
            "lock table ledger_heads in access exclusive mode",
            () => PostForHeadersAsync($"parts/{serial}/records", mount, "cut-off")
        );
        Assert.Equal((503, true), cutOff);

        (await workshop.PostAsync($"parts/{serial}/records", mount, key: "cut-off")).Expect(201);
        Assert.Equal("cure", (await workshop.GetAsync($"parts/{serial}")).Expect(200).Text("stage"));
    }

    [Theory]
    [InlineData("/quality", "film_fates")]
    [InlineData("/parts", "part_standings")]
    [InlineData("/api/v1/quality/film-lots", "film_fates")]
    [InlineData("/api/v1/parts", "part_standings")]
    [InlineData("/api/v1/search?q=D26", "parts")]
    public async Task A_question_whose_database_session_is_ended_is_told_to_come_again(string path, string table) =>
        Assert.Equal((503, true), await CutOffAsync($"lock table {table} in access exclusive mode", () => GetForHeadersAsync(path)));

    [Fact]
    public async Task A_database_that_takes_no_connection_is_told_of_and_the_service_is_not_ready_until_it_does()
    {
        await using var door = BackDoor.Of(workshop);
        var name = await door.AskAsync<string>("select current_database()::text");
        await using var beside = Beside();
        await beside.RunAsync($"alter database {name} allow_connections false");
        await beside.RunAsync($"select pg_terminate_backend(pid) from pg_stat_activity where datname = '{name}'");

        Assert.Equal((503, true), await GetForHeadersAsync("/api/v1/parts"));
        Assert.Equal((503, true), await GetForHeadersAsync("/parts"));
        Assert.Equal(503, (int)(await workshop.GetAsync("/health/ready", null)).Status);
        Assert.Equal(200, (int)(await workshop.GetAsync("/health/live", null)).Status);

        await beside.RunAsync($"alter database {name} allow_connections true");
        await AnsweredAgainAsync("parts");
        workshop.Clock.Pass(TimeSpan.FromSeconds(5));
        (await workshop.GetAsync("/health/ready", null)).Expect(200);
    }

    [Fact]
    public async Task While_nothing_can_be_written_the_service_answers_questions_and_is_not_ready()
    {
        await using var door = BackDoor.Of(workshop);
        (await workshop.GetAsync("/health/ready", null)).Expect(200);
        await door.RunAsync(
            $"alter database {await door.AskAsync<string>("select current_database()::text")} set default_transaction_read_only = on"
        );
        await door.RunAsync(EndsEverySession);

        await AnsweredAgainAsync("parts");
        Assert.Equal((503, true), await PostForHeadersAsync("parts", new { kind = "diaphragm", model = Workshop.Model }, "no-write"));
        workshop.Clock.Pass(TimeSpan.FromSeconds(5));
        var ready = await workshop.GetAsync("/health/ready", null);
        Assert.Equal((503, "not-writable"), ((int)ready.Status, ready.Json.Text("status")));
    }

    /// <summary>Sessions that wait in the pool do not know yet that they were ended: each may fail once more, and with a 503.</summary>
    private async Task AnsweredAgainAsync(string path)
    {
        for (var left = 20; await workshop.GetAsync(path) is var reply && (int)reply.Status != 200; left--)
        {
            Assert.True((int)reply.Status == 503 && left > 0, reply.Body);
        }
    }

    /// <summary>Asks while a table is locked, and ends the session that waits for it.</summary>
    private async Task<(int Status, bool RetryAfter)> CutOffAsync(string locked, Func<Task<(int, bool)>> ask)
    {
        await using var beside = BackDoor.Of(workshop);
        await using var held = await beside.HoldAsync(locked);
        var asked = ask();
        while (await beside.AskAsync<long>(Waiters) == 0 && !asked.IsCompleted)
        {
            await Task.Delay(10);
        }

        await beside.RunAsync(EndsWaiters);
        return await asked;
    }

    private async Task<(int Status, bool RetryAfter)> GetForHeadersAsync(string path)
    {
        using var client = await workshop.ClientAsync(Workshop.Quality);
        client.DefaultRequestHeaders.Accept.ParseAdd(path.StartsWith("/api", StringComparison.Ordinal) ? "application/json" : "text/html");
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative));
        return ((int)answer.StatusCode, answer.Headers.RetryAfter is not null);
    }

    private async Task<(int Status, bool RetryAfter)> PostForHeadersAsync(string path, object body, string key)
    {
        using var client = await workshop.ClientAsync(Workshop.Builder);
        client.DefaultRequestHeaders.Add("Idempotency-Key", key);
        using var answer = await client.PostAsync(
            new Uri($"/api/v1/{path}", UriKind.Relative),
            System.Net.Http.Json.JsonContent.Create(body)
        );
        return ((int)answer.StatusCode, answer.Headers.RetryAfter is not null);
    }

    /// <summary>Another database of the same server: from here the workshop's own can be closed.</summary>
    private BackDoor Beside() => BackDoor.Of(workshop, database: "postgres");
}
