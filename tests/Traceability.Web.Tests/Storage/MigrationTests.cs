using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.Logging.Abstractions;
using Traceability.Migrations;
using Traceability.Persistence.Model;
using Traceability.Web.Hosting;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Storage;

/// <summary>
/// However a store came to the tables of this version, they are the same, and no fact of it is lost. No migration but the first is named:
/// one that is added is tested without a change here, on stores that every earlier one has left with a row in every table.
/// While Initial is the only migration there is no store of an earlier one: what is then shown is that an empty database comes to the same
/// tables by both ways, and that a store of this version stays as it is.
/// </summary>
[Trait("Category", "Storage")]
public sealed class MigrationTests
{
    private const string Nothing = "an empty database";

    /// <summary>How far stores have come when this version meets them; the last has come all the way.</summary>
    public static TheoryData<string> Stores => [Nothing, .. All()];

    [Fact]
    public void The_first_migration_is_Initial() => Assert.EndsWith("_Initial", All()[0], StringComparison.Ordinal);

    [Theory]
    [MemberData(nameof(Stores))]
    public async Task A_store_that_has_come_so_far_gets_the_tables_of_a_new_one_and_loses_no_fact(string store)
    {
        var server = await PostgresServer.SharedAsync();
        var older = await server.CreateDatabaseAsync();
        if (store != Nothing)
        {
            await MigrateAsync(older, store);
            await OneRowEach.PutAsync(older);
        }

        var facts = await OneRowEach.FactsAsync(older);
        await BringAsync(older, isNew: false);

        var fresh = await server.CreateDatabaseAsync();
        await BringAsync(fresh, isNew: true);
        var expected = await TablesAsText.OfAsync(fresh);
        Assert.Contains("never_changed", expected, StringComparison.Ordinal);
        Assert.Equal(expected, await TablesAsText.OfAsync(older));
        Assert.Equal(store == Nothing, facts == 0);
        Assert.InRange(await OneRowEach.FactsAsync(older), facts, long.MaxValue);
    }

    /// <summary>As the service does it: by one script for a cluster that is new, else by EF Core, one migration after the other.</summary>
    private static async Task BringAsync(string connectionString, bool isNew)
    {
        var tables = new TablesUpToDate(NullLogger.Instance);
        tables.Warm(isNew);
        await tables.BringAsync(connectionString, () => Task.CompletedTask, CancellationToken.None);
    }

    private static async Task MigrateAsync(string connectionString, string migration)
    {
        await using var db = new WorkshopContext(WorkshopOptions.For(connectionString));
        await db.GetService<IMigrator>().MigrateAsync(migration);
    }

    private static List<string> All()
    {
        using var db = new WorkshopContext(WorkshopOptions.For("Host=nowhere"));
        return [.. db.Database.GetMigrations()];
    }
}
