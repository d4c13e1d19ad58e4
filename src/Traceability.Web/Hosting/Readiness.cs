using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;

namespace Traceability.Web.Hosting;

/// <summary>What the service says when it is asked whether it is ready: one word, and in what is not well why.</summary>
/// <param name="Status" example="ready"><c>ready</c>, or in one word why not.</param>
/// <param name="Because" example="the database does not answer">The same in words; null when it is ready.</param>
public sealed record Ready(string Status, string? Because = null)
{
    /// <summary>Facts can be recorded.</summary>
    public static readonly Ready Yes = new("ready");
}

/// <summary>
/// Ready is a service that can record: the database answers, is migrated, takes a row, has room, and the clock runs on. Who asks every few
/// seconds is answered from the last look for a second, so that asking writes little.
/// </summary>
public sealed class Readiness(WorkshopDatabase database, IServiceScopeFactory scopes, TimeProvider clock, ILogger<Readiness> log)
    : IDisposable
{
    private const string ProbeSql = """
        insert into workshop_settings (name, value) values ('last-write-probe', {0}) on conflict (name) do update set value = excluded.value
        """;

    private static readonly TimeSpan GoodFor = TimeSpan.FromSeconds(1);

    /// <summary>A small row may find room where a record found none.</summary>
    private static readonly TimeSpan FailedFor = TimeSpan.FromSeconds(30);

    private readonly SemaphoreSlim one = new(1, 1);
    private (Ready Said, DateTimeOffset At)? last;
    private long writeFailedAt;

    /// <summary>Notes that a command could not be written.</summary>
    public void Note(Exception failure)
    {
        if (DatabaseFailure.IsOfWriting(failure))
        {
            Interlocked.Exchange(ref writeFailedAt, clock.GetUtcNow().UtcTicks);
        }
    }

    /// <summary>Whether it is ready now.</summary>
    public async Task<Ready> AskAsync(CancellationToken cancellation)
    {
        if (!database.Migrated)
        {
            return new("starting", "the database is being started or brought up to date");
        }

        await one.WaitAsync(cancellation);
        try
        {
            var now = clock.GetUtcNow();
            if (last is not { } kept || now - kept.At > GoodFor || now < kept.At)
            {
                last = kept = (await LookAsync(now, cancellation), now);
            }

            return kept.Said;
        }
        finally
        {
            one.Release();
        }
    }

    public void Dispose() => one.Dispose();

    private async Task<Ready> LookAsync(DateTimeOffset now, CancellationToken cancellation)
    {
        try
        {
            await using var scope = scopes.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<WorkshopContext>();
            if (ServerClock.Behind(now, await NewestEntry.RecordedAtAsync(db, cancellation)) is { } behind)
            {
                return new("clock-behind", behind.Message);
            }

            await db.Database.ExecuteSqlRawAsync(ProbeSql, [now.ToString("O")], cancellation);
        }
        catch (Exception e) when (DatabaseFailure.Is(e))
        {
            log.LogWarning("the service is not ready: {Reason}", e.Message);
            return DatabaseFailure.IsOfWriting(e)
                ? new("not-writable", "the database answers but writes nothing")
                : new("no-database", "the database does not answer");
        }

        return now - new DateTimeOffset(Interlocked.Read(ref writeFailedAt), TimeSpan.Zero) < FailedFor
                ? new("not-writable", "a command could not be written within the last half minute: there may be no room left on the disk")
            : database.LittleRoom is { } room ? new("not-writable", room)
            : Ready.Yes;
    }
}
