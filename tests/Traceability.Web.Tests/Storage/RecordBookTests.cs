using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Tests.Storage;

/// <summary>What the one write door promises about commands that come at once, and about its clock.</summary>
[Trait("Category", "Storage")]
public sealed class RecordBookTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string WaitsForSql = """
        select exists (select from pg_stat_activity a join pg_locks l on l.pid = a.pid and not l.granted
            where a.datname = current_database() and a.wait_event_type = 'Lock' and $1 = any(pg_blocking_pids(a.pid)))
        """;

    /// <summary>
    /// The first command is held open inside its transaction until the database itself says that the second waits for it. The clock
    /// decides nothing: without the lock the second would come to its end, and that is what is looked for meanwhile.
    /// </summary>
    [Fact]
    public async Task A_command_on_a_part_waits_for_the_one_before_and_decides_on_what_that_wrote()
    {
        var part = await PartAsync();
        await using var door = BackDoor.Of(workshop);
        await using var first = workshop.Services.CreateAsyncScope();
        await using var second = workshop.Services.CreateAsyncScope();
        var opened = new TaskCompletionSource<int>();
        var release = new TaskCompletionSource();
        var writing = WriteAsync(
            first,
            async (db, book) =>
            {
                var open = await book.OpenAsync(part, default);
                opened.TrySetResult(await db.Database.SqlQuery<int>($"select pg_backend_pid() as \"Value\"").SingleAsync());
                await release.Task;
                book.Append(open!, "report", Scratch(part));
            }
        );
        var holder = await opened.Task;
        var seen = Array.Empty<string>();
        var waiting = WriteAsync(
            second,
            async (_, book) => seen = [.. (await book.OpenAsync(part, default))!.Dossier.Of<Nonconformity>().Select(n => n.Code)]
        );
        try
        {
            while (!await door.AskAsync<bool>(WaitsForSql, holder))
            {
                Assert.False(waiting.IsCompleted, "the second command did not wait for the first");
            }
        }
        finally
        {
            release.SetResult();
            await Task.WhenAll(writing, waiting);
        }

        Assert.Equal(["scratched"], seen);
    }

    /// <summary>The tests' clock is hours ahead of the machine's.</summary>
    [Fact]
    public async Task An_answer_is_kept_with_the_time_of_the_services_clock()
    {
        var (key, before) = ($"{Guid.NewGuid()}", workshop.Clock.GetUtcNow());
        (await workshop.PostAsync("parts", new { kind = "diaphragm", model = Workshop.Model }, key: key)).Expect(201);
        await using var door = BackDoor.Of(workshop);
        var kept = await door.AskAsync<DateTime>("select recorded_at from idempotent_answers where key = $1", key);
        Assert.InRange(kept, before.UtcDateTime.AddMilliseconds(-1), workshop.Clock.GetUtcNow().UtcDateTime);
    }

    private static Task WriteAsync(AsyncServiceScope scope, Func<WorkshopContext, RecordBook, Task> act)
    {
        var book = scope.ServiceProvider.GetRequiredService<RecordBook>();
        return Task.Run(() =>
            book.WriteAsync(
                WriteRequest.Unkeyed,
                JsonRules.Options,
                async _ =>
                {
                    await act(scope.ServiceProvider.GetRequiredService<WorkshopContext>(), book);
                    return Answer.Ok("done");
                },
                default
            )
        );
    }

    private Nonconformity Scratch(Guid part) =>
        new(
            Guid.CreateVersion7(),
            part,
            null,
            null,
            "scratched",
            "scratched",
            Guid.NewGuid(),
            workshop.Clock.GetUtcNow(),
            workshop.Clock.GetUtcNow()
        );

    private async Task<Guid> PartAsync()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await using var door = BackDoor.Of(workshop);
        return await door.AskAsync<Guid>("select id from parts where serial = $1", serial);
    }
}
