using Microsoft.Extensions.DependencyInjection;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Tests.Storage;

[Trait("Category", "Storage")]
public sealed class LedgerAuditTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_changed_reading_is_named()
    {
        var (serial, id) = await MountedAsync();
        var reading = await AskAsync<Guid>($"select id from readings where part_id = '{id}'");
        var found = await TamperAsync(serial, $"update readings set value = 851, digits = '851' where id = '{reading}'");
        Assert.Equal((2, $"row {reading} of readings was changed: it says other than entry 2"), (found.Sequence, found.Problem));
    }

    [Fact]
    public async Task A_deleted_reading_is_named()
    {
        var (serial, id) = await MountedAsync();
        var reading = await AskAsync<Guid>($"select id from readings where part_id = '{id}'");
        var found = await TamperAsync(serial, $"delete from readings where id = '{reading}'");
        Assert.Equal($"readings has no row {reading}, which entry 2 names", found.Problem);
    }

    [Fact]
    public async Task A_changed_body_is_named()
    {
        var (serial, id) = await MountedAsync();
        var found = await TamperAsync(serial, $"update ledger_entries set body = replace(body, '850', '851') where subject_id = '{id}' and sequence = 2");
        Assert.Equal("the body of entry 2 was changed: its hash is another", found.Problem);
    }

    [Fact]
    public async Task A_hash_that_was_made_up_is_named_even_when_the_head_agrees()
    {
        var (serial, id) = await MountedAsync();
        (await workshop.PostAsync("holds", new { part = serial, reason = "one more entry" }, Workshop.Quality)).Expect(201);
        var found = await TamperAsync(serial, $"update ledger_entries set hash = repeat('a', 64) where subject_id = '{id}' and sequence = 3; update ledger_heads set hash = repeat('a', 64) where subject_id = '{id}'");
        Assert.Equal((3, "the body of entry 3 was changed: its hash is another"), (found.Sequence, found.Problem));
    }

    [Fact]
    public async Task An_entry_that_follows_another_than_the_one_before_it_is_named()
    {
        var (serial, id) = await MountedAsync();
        var found = await TamperAsync(serial, $"update ledger_entries set previous_hash = repeat('b', 64) where subject_id = '{id}' and sequence = 2");
        Assert.Equal((2, "entry 2 does not follow the entry before it"), (found.Sequence, found.Problem));
    }

    [Fact]
    public async Task A_removed_entry_is_named()
    {
        var (serial, id) = await MountedAsync();
        var found = await TamperAsync(serial, $"delete from ledger_entries where subject_id = '{id}' and sequence = 1");
        Assert.Equal("entry 1 is missing", found.Problem);
    }

    [Fact]
    public async Task A_removed_last_entry_is_named()
    {
        var (serial, id) = await MountedAsync();
        var found = await TamperAsync(serial, $"delete from ledger_entries where subject_id = '{id}' and sequence = 2");
        Assert.Equal("the chain should end at entry 2, but 1 entries are there", found.Problem);
    }

    [Fact]
    public async Task A_chain_that_was_removed_whole_is_named()
    {
        var (serial, id) = await MountedAsync();
        var found = await TamperAsync(serial, $"delete from ledger_entries where subject_id = '{id}'; delete from ledger_heads where subject_id = '{id}'");
        Assert.Equal("the chain has no head", found.Problem);
    }

    private async Task<(string Serial, Guid Id)> MountedAsync()
    {
        var serial = await workshop.MountAsync();
        return (serial, await AskAsync<Guid>($"select id from parts where serial = '{serial}'"));
    }

    private async Task<T> AskAsync<T>(string sql)
    {
        await using var door = BackDoor.Of(workshop);
        return await door.AskAsync<T>(sql);
    }

    /// <summary>What the audit finds after the tampering; before it, it finds nothing.</summary>
    private async Task<AuditFinding> TamperAsync(string serial, string sql)
    {
        await using var door = BackDoor.Of(workshop);
        await using var scope = workshop.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopContext>();
        var id = (await scope.ServiceProvider.GetRequiredService<DossierReader>().FindAsync(serial, default))!.Value;
        var audit = new LedgerAudit(db);
        Assert.Null(await audit.CheckAsync(id, default));
        await door.TamperAsync(sql);
        return Assert.IsType<AuditFinding>(await audit.CheckAsync(id, default));
    }
}
