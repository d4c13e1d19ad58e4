using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Migrations;
using Traceability.Persistence.Model;
using Traceability.Web.Tests.Server;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Hosting;

/// <summary>
/// A store whose migrations this version does not know is refused in one line, whatever was started, and is left as it was.
/// </summary>
[Trait("Category", "Storage")]
public sealed class OtherVersionTests
{
    private const string OfBefore = "20261127184307_StageVerdicts";
    private const string OfLater = "29991231235959_Later";

    private const string StoreOfBefore = $"""
        create table "__EFMigrationsHistory" (migration_id varchar(150) primary key, product_version varchar(32) not null);
        insert into "__EFMigrationsHistory" values ('20261125084153_Initial', '10.0.0'), ('{OfBefore}', '10.0.0');
        create table readings (id uuid primary key, digits text not null);
        insert into readings values (gen_random_uuid(), '70.50');
        """;

    public static TheoryData<string[]> Commands =>
        [
            ["serve"],
            ["serve", "--demo"],
            ["demo"],
            ["migrate"],
            ["verify"],
            ["verify", "--serial", "U-1"],
            ["rebuild"],
            ["rebuild", "--check"],
            ["certificate", "U-1"],
            ["route", "load", Path.Combine(AppContext.BaseDirectory, "DemoRoutes", "tarn-1-unit.yaml")],
        ];

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task A_store_of_before_the_first_release_is_refused_in_one_line_and_left_alone(string[] command)
    {
        var store = await (await PostgresServer.SharedAsync()).CreateDatabaseAsync();
        await RunAsync(store, StoreOfBefore);
        var line = await RefusedAsync(store, command);
        Assert.Contains("made by a version before the first release", line, StringComparison.Ordinal);
        Assert.Contains("nothing was changed", line, StringComparison.Ordinal);
        Assert.Contains("Keep that version to read it", line, StringComparison.Ordinal);
        Assert.Contains("new data folder (TRACEABILITY_DATA)", line, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("serve")]
    [InlineData("migrate")]
    [InlineData("verify")]
    [InlineData("rebuild")]
    public async Task A_store_of_a_newer_version_is_refused_in_one_line_and_left_alone(params string[] command)
    {
        var store = await (await PostgresServer.SharedAsync()).CreateDatabaseAsync();
        await using (var db = new WorkshopContext(WorkshopOptions.For(store)))
        {
            await db.Database.MigrateAsync();
        }

        await RunAsync(store, $"""insert into "__EFMigrationsHistory" values ('{OfLater}', '99.0.0')""");
        var line = await RefusedAsync(store, command);
        Assert.Contains($"made by a newer version (its migration {OfLater}", line, StringComparison.Ordinal);
        Assert.Contains("nothing was changed", line, StringComparison.Ordinal);
        Assert.Contains("Start that version or a later one", line, StringComparison.Ordinal);
        Assert.DoesNotContain("before the first release", line, StringComparison.Ordinal);
    }

    /// <summary>The one line that was said, after everything else about a refusal was found as it must be.</summary>
    private static async Task<string> RefusedAsync(string store, string[] command)
    {
        var before = await TablesAsText.OfAsync(store);
        var logins = await LoginsAsync(store);
        using var run = await ProgramRun.ToEndAsync(new() { ["ConnectionStrings__Traceability"] = store }, command);
        Assert.Equal(1, run.Code);
        Assert.DoesNotContain("   at ", run.Errors + run.Output, StringComparison.Ordinal);
        Assert.Equal(before, await TablesAsText.OfAsync(store));
        Assert.Equal(logins, await LoginsAsync(store));
        var line = Assert.Single(run.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith("cannot start: ", line, StringComparison.Ordinal);
        return line;
    }

    private static async Task<object?> LoginsAsync(string store)
    {
        await using var source = NpgsqlDataSource.Create(store);
        await using var ask = source.CreateCommand("select count(*) from pg_roles where starts_with(rolname, current_database())");
        return await ask.ExecuteScalarAsync();
    }

    private static async Task RunAsync(string store, string sql)
    {
        await using var source = NpgsqlDataSource.Create(store);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync();
    }
}
