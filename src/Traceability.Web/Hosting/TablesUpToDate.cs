using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql;
using Traceability.Domain.Records;
using Traceability.Migrations;
using Traceability.Persistence.Model;

namespace Traceability.Web.Hosting;

/// <summary>
/// Brings the tables to this version, fast where it can be: nothing but one question when they are there already, and one script, written
/// while the server still starts, when none is.
/// </summary>
public sealed class TablesUpToDate(ILogger log)
{
    private const string IsThereSql = "select to_regclass('\"__EFMigrationsHistory\"') is not null";
    private const string AppliedSql = "select migration_id from \"__EFMigrationsHistory\"";

    /// <summary>Key of the advisory lock: any number that nobody else uses in this database.</summary>
    private const long OneAtATime = 7_203_114_508;

    private string? wholeScript;

    /// <summary>Builds EF Core's model, and for a database that is new the script of all migrations: neither needs a server.</summary>
    public void Warm(bool isNew)
    {
        using var db = new WorkshopContext(WorkshopOptions.For("Host=localhost"));
        _ = db.Model;
        if (isNew)
        {
            wholeScript = db.GetService<IMigrator>().GenerateScript(options: MigrationsSqlGenerationOptions.NoTransactions);
        }
    }

    /// <summary>
    /// Lets EF Core translate a query once: what it needs for every later one is compiled meanwhile. Needs no server either.
    /// </summary>
    public static void WarmQueries()
    {
        using var db = new WorkshopContext(WorkshopOptions.For("Host=localhost"));
        _ = db.Set<Person>().Where(p => p.Badge == "").ToQueryString();
    }

    /// <summary>
    /// Brings them, then does what else only one instance may do at a time. Several may start at once on one server: the others wait, and
    /// find it done.
    /// </summary>
    /// <exception cref="StoreVersionException">The store belongs to another version; it is left as it is.</exception>
    public async Task BringAsync(string ownerConnectionString, Func<Task> afterwards, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(ownerConnectionString);
        await connection.OpenAsync(cancellation);
        await RunAsync(connection, $"select pg_advisory_lock({OneAtATime})", cancellation);
        try
        {
            await BringAsync(connection, ownerConnectionString, cancellation);
            await afterwards();
        }
        finally
        {
            // Connections go back to the pool as they are, this lock with them.
            await RunAsync(connection, $"select pg_advisory_unlock({OneAtATime})", CancellationToken.None);
        }
    }

    private async Task BringAsync(NpgsqlConnection connection, string ownerConnectionString, CancellationToken cancellation)
    {
        await using var db = new WorkshopContext(WorkshopOptions.For(ownerConnectionString));
        var known = db.Database.GetMigrations().ToList();
        var applied = await AppliedAsync(connection, cancellation);
        StoreVersion.Check(connection.Database, known, applied ?? []);
        var pending = known.Where(m => applied?.Contains(m) is not true).ToList();
        if (pending.Count == 0)
        {
            return;
        }

        log.LogInformation("bringing the tables up to date: {Migrations}", pending);
        if (applied is null && wholeScript is not null)
        {
            await using var transaction = await connection.BeginTransactionAsync(cancellation);
            await using var script = new NpgsqlCommand(wholeScript, connection, transaction);
            await script.ExecuteNonQueryAsync(cancellation);
            await transaction.CommitAsync(cancellation);
        }
        else
        {
            // Changing the tables of a large store takes minutes.
            db.Database.SetCommandTimeout(TimeSpan.Zero);
            await db.Database.MigrateAsync(cancellation);
        }
    }

    private static async Task RunAsync(NpgsqlConnection connection, string sql, CancellationToken cancellation)
    {
        // Another instance may be changing the tables of a large store.
        await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
        await command.ExecuteNonQueryAsync(cancellation);
    }

    /// <summary>The migrations that the database knows; null when it was never migrated.</summary>
    private static async Task<HashSet<string>?> AppliedAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using var isThere = new NpgsqlCommand(IsThereSql, connection);
        if (await isThere.ExecuteScalarAsync(cancellation) is not true)
        {
            return null;
        }

        await using var ask = new NpgsqlCommand(AppliedSql, connection);
        await using var reader = await ask.ExecuteReaderAsync(cancellation);
        var applied = new HashSet<string>();
        while (await reader.ReadAsync(cancellation))
        {
            applied.Add(reader.GetString(0));
        }

        return applied;
    }
}
