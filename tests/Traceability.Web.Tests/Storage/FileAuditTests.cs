using Traceability.Persistence.Book;

namespace Traceability.Web.Tests.Storage;

/// <summary>Kept files, and what <c>verify --serial</c> looks at.</summary>
[Trait("Category", "Storage")]
public sealed class FileAuditTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData(
        "update stored_files set bytes = bytes || '\\x00' where sha256 = '{0}'",
        "the bytes of the kept file {0} were changed: their digest is "
    )]
    [InlineData("delete from stored_files where sha256 = '{0}'", "{1} {0} is missing among the kept files")]
    public async Task A_changed_or_missing_file_is_found_whatever_it_is(string sql, string said)
    {
        var unit = await workshop.UnitAsync();
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        await using var health = new HealthCheck(workshop);
        var part = await AskAsync<Guid>($"select id from parts where serial = '{unit}'");
        foreach (
            var (what, from) in new[]
            {
                ("evidence", "select sha256 from evidence where part_id = '{0}' limit 1"),
                ("document of a certificate", "select document_sha256 from certificates where part_id = '{0}'"),
                ("certificate", "select pdf_sha256 from certificates where part_id = '{0}'"),
            }
        )
        {
            var digest = await AskAsync<string>(string.Format(null, from, part));
            var (before, beforeOfPart) = (await health.LedgerAsync(), await new LedgerAudit(health.Db).CheckPartAsync(part, default));

            await TamperAsync(string.Format(null, sql, digest));

            var expected = string.Format(null, said, digest, what);
            Assert.StartsWith(expected, Assert.Single((await health.LedgerAsync()).Except(before)).Problem, StringComparison.Ordinal);
            Assert.StartsWith(
                expected,
                Assert.Single((await new LedgerAudit(health.Db).CheckPartAsync(part, default)).Except(beforeOfPart)).Problem,
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public async Task A_file_that_no_fact_names_is_found()
    {
        await using var health = new HealthCheck(workshop);
        var before = await health.LedgerAsync();
        await TamperAsync("insert into stored_files (sha256, bytes) values (encode(sha256('made up'), 'hex'), 'made up')");
        Assert.EndsWith(
            "is named by no fact",
            Assert.Single((await health.LedgerAsync()).Except(before)).Problem,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_row_about_one_part_that_its_chain_does_not_name_is_found_when_only_that_part_is_asked_about()
    {
        var unit = await workshop.UnitAsync();
        var part = await AskAsync<Guid>($"select id from parts where serial = '{unit}'");
        await using var health = new HealthCheck(workshop);
        Assert.Empty(await new LedgerAudit(health.Db).CheckPartAsync(part, default));

        await TamperAsync(
            "insert into holds (id, part_id, reason, by, occurred_at, recorded_at) select gen_random_uuid(), id, 'made up', by, now(),"
                + $" now() from parts where id = '{part}'"
        );

        Assert.EndsWith(
            "of holds is named by no entry of the ledger",
            Assert.Single(await new LedgerAudit(health.Db).CheckPartAsync(part, default)).Problem,
            StringComparison.Ordinal
        );
    }

    private async Task<T> AskAsync<T>(string sql)
    {
        await using var door = BackDoor.Of(workshop);
        return await door.AskAsync<T>(sql);
    }

    private async Task TamperAsync(string sql)
    {
        await using var door = BackDoor.Of(workshop);
        await door.TamperAsync(sql);
    }
}
