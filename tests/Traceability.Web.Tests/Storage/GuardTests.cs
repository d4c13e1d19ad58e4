using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Traceability.Migrations;
using Traceability.Persistence.Model;
using Traceability.Web.Hosting;

namespace Traceability.Web.Tests.Storage;

[Trait("Category", "Storage")]
public sealed class GuardTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Reader = "traceability_reader";
    private const string Owner = "";

    public static TheoryData<string> InsertOnlyTables => [.. FactTables.All.Select(t => t.Table).Concat(BackDoor.KeptTables)];

    public static TheoryData<string> ReadableTables =>
        [
            .. FactTables
                .All.Select(t => t.Table)
                .Concat(BackDoor.KeptTables)
                .Where(t => t is not ("pin_settings" or "pin_codes" or "idempotent_answers")),
        ];

    [Theory]
    [MemberData(nameof(InsertOnlyTables))]
    public async Task Rows_are_changed_deleted_and_emptied_by_nobody(string table)
    {
        foreach (var role in new[] { WorkshopOptions.AppRole, Reader, Owner })
        {
            await using var door = BackDoor.Of(workshop, role.Length == 0 ? null : role);
            var column = await door.AskAsync<string>(
                "select attname::text from pg_attribute where attrelid = $1::regclass and attnum = 1",
                table
            );
            foreach (var change in new[] { $"update {table} set {column} = {column}", $"delete from {table}", $"truncate {table} cascade" })
            {
                var refusal = await door.RefusalAsync(change);
                Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refusal.SqlState);
                Assert.Equal(role == Owner, refusal.MessageText.StartsWith("facts are never changed", StringComparison.Ordinal));
            }
        }
    }

    [Theory]
    [MemberData(nameof(ReadableTables))]
    public async Task The_reader_reads_and_adds_nothing(string table)
    {
        await using var door = BackDoor.Of(workshop, Reader);
        Assert.True(await door.AskAsync<long>($"select count(*) from {table}") >= 0);
        Assert.Equal(
            PostgresErrorCodes.InsufficientPrivilege,
            (await door.RefusalAsync($"insert into {table} select * from {table}")).SqlState
        );
    }

    [Theory]
    [InlineData("pin_settings")]
    [InlineData("pin_codes")]
    [InlineData("pin_tries")]
    [InlineData("idempotent_answers")]
    [InlineData("sign_in_sessions")]
    [InlineData("data_protection_keys")]
    public async Task The_reader_sees_no_secret(string table)
    {
        await using var door = BackDoor.Of(workshop, Reader);
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, (await door.RefusalAsync($"select * from {table}")).SqlState);
    }

    [Theory]
    [InlineData("alter table readings disable trigger never_changed")]
    [InlineData("drop trigger never_changed on readings")]
    [InlineData("create or replace function refuse_change() returns trigger language plpgsql as 'begin return null; end'")]
    [InlineData("drop table readings")]
    [InlineData("alter table readings drop column value")]
    public async Task The_application_cannot_take_the_guards_away(string sql)
    {
        await using var door = BackDoor.Of(workshop, WorkshopOptions.AppRole);
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, (await door.RefusalAsync(sql)).SqlState);
    }

    [Theory]
    [InlineData("reset role; update readings set digits = digits")]
    [InlineData("reset role; set session_replication_role = replica; delete from readings")]
    [InlineData("reset session authorization; alter table readings disable trigger never_changed")]
    [InlineData("set role traceability_owner")]
    [InlineData("select password from service_logins")]
    [InlineData("create role anybody login superuser")]
    public async Task The_services_own_login_cannot_become_more_than_the_applications_role(string sql)
    {
        await using var service = NpgsqlDataSource.Create(workshop.Services.GetRequiredService<WorkshopDatabase>().AppConnectionString);
        await using var ask = service.CreateCommand(
            "select string_agg(role_name::text, ',') from information_schema.enabled_roles where role_name like 'traceability%'"
        );
        Assert.Equal(WorkshopOptions.AppRole, await ask.ExecuteScalarAsync());

        await using var tried = service.CreateCommand(sql);
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => tried.ExecuteNonQueryAsync());
        Assert.Contains(refusal.SqlState, (string[])[PostgresErrorCodes.InsufficientPrivilege, PostgresErrorCodes.InvalidParameterValue]);
    }
}
