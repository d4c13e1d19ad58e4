using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Traceability.Persistence.Model;
using Traceability.Web.Hosting;

namespace Traceability.Web.Tests.Storage;

/// <summary>The database behind the service, reached past it: as the owner of the tables, or under another role.</summary>
internal sealed class BackDoor : IAsyncDisposable
{
    /// <summary>Insert-only tables that hold no facts of their own.</summary>
    public static readonly IReadOnlyList<string> KeptTables = ["ledger_entries", "stored_files", "idempotent_answers"];

    private readonly NpgsqlDataSource source;

    private BackDoor(string connectionString) => source = NpgsqlDataSource.Create(connectionString);

    public static BackDoor Of(Workshop workshop, string? role = null, string? database = null)
    {
        var owner = new NpgsqlConnectionStringBuilder(workshop.Services.GetRequiredService<WorkshopDatabase>().OwnerConnectionString);
        if (role is not null)
        {
            owner.Options = $"-c role={role}";
        }

        owner.Database = database ?? owner.Database;
        return new(owner.ConnectionString);
    }

    public ValueTask DisposeAsync() => source.DisposeAsync();

    public async Task<int> RunAsync(string sql, params object[] values)
    {
        await using var command = Command(sql, values);
        return await command.ExecuteNonQueryAsync();
    }

    /// <summary>Changes what nobody may change: with triggers and references asleep, as only a superuser can.</summary>
    public Task<int> TamperAsync(string sql) => RunAsync($"set session_replication_role = replica; {sql}");

    public async Task<T> AskAsync<T>(string sql, params object[] values)
    {
        await using var command = Command(sql, values);
        return (T)(await command.ExecuteScalarAsync())!;
    }

    /// <summary>
    /// Runs a statement in a transaction that stays open, with its locks, until it is disposed of; what it wrote is then undone.
    /// </summary>
    public async Task<IAsyncDisposable> HoldAsync(string sql)
    {
        var connection = await source.OpenConnectionAsync();
        _ = await connection.BeginTransactionAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
        return connection;
    }

    /// <summary>What the database answers to something that it must refuse.</summary>
    public async Task<PostgresException> RefusalAsync(string sql) => await Assert.ThrowsAsync<PostgresException>(() => RunAsync(sql));

    /// <summary>Fails when anything was written during the misuse: a fact, a ledger entry, a file, a kept answer, a derived row.</summary>
    public async Task UntouchedByAsync(Func<Task> misuse)
    {
        var before = await RowsAsync();
        await misuse();
        Assert.Equal(before, await RowsAsync());
    }

    /// <summary>How many rows each insert-only table has, and a sum over what the derived tables say.</summary>
    public async Task<IReadOnlyDictionary<string, long>> RowsAsync()
    {
        var counts = FactTables.All.Select(t => t.Table).Concat(KeptTables).Select(t => $"select '{t}', count(*) from {t}");
        string[] derived = ["part_standings", "containments", "ledger_heads", "stage_verdicts", "film_fates"];
        var sums = derived.Select(t => $"select '{t}', coalesce(sum(hashtext(t::text)), 0)::bigint from {t} t");
        await using var command = Command(string.Join(" union all ", counts.Concat(sums)), []);
        await using var reader = await command.ExecuteReaderAsync();
        var rows = new SortedDictionary<string, long>(StringComparer.Ordinal);
        while (await reader.ReadAsync())
        {
            rows[reader.GetString(0)] = reader.GetInt64(1);
        }

        return rows;
    }

    private NpgsqlCommand Command(string sql, object[] values)
    {
        var command = source.CreateCommand(sql);
        foreach (var value in values)
        {
            command.Parameters.Add(new() { Value = value });
        }

        return command;
    }
}
