using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using Traceability.Migrations;
using Traceability.Persistence.Model;
using Traceability.Web.Hosting;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Hosting;

/// <summary>However the tables were made, they are the same.</summary>
public sealed class TablesUpToDateTests
{
    private const string Everything = """
        select string_agg(line, chr(10) order by line) from (
            select concat_ws(' ', table_name, column_name, data_type, is_nullable, column_default) as line from information_schema.columns
                where table_schema = 'public'
            union all select concat_ws(' ', tgrelid::regclass, tgname, tgfoid::regproc) from pg_trigger where not tgisinternal
            union all select indexdef from pg_indexes where schemaname = 'public'
            union all select concat_ws(' ', grantee, table_name, privilege_type) from information_schema.role_table_grants
                where table_schema = 'public'
            union all select migration_id from "__EFMigrationsHistory") all_lines
        """;

    [Fact]
    public async Task One_script_makes_the_tables_that_the_migrations_make()
    {
        var server = await PostgresServer.SharedAsync();
        var migrated = await server.CreateDatabaseAsync();
        await using (var db = new WorkshopContext(WorkshopOptions.For(migrated)))
        {
            await db.Database.MigrateAsync();
        }

        var scripted = await server.CreateDatabaseAsync();
        var tables = new TablesUpToDate(NullLogger.Instance);
        tables.Warm(isNew: true);
        await tables.BringAsync(scripted, () => Task.CompletedTask, CancellationToken.None);

        var expected = await AskAsync(migrated);
        Assert.Contains("never_changed", expected, StringComparison.Ordinal);
        Assert.Equal(expected, await AskAsync(scripted));
    }

    private static async Task<string> AskAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var ask = new NpgsqlCommand(Everything, connection);
        return (string)(await ask.ExecuteScalarAsync())!;
    }
}
