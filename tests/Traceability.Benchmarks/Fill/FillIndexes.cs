using Npgsql;

namespace Traceability.Benchmarks;

/// <summary>
/// Takes away what slows a large COPY - indexes, checks of foreign keys, checkpoints every few seconds - and puts it back. The data are
/// made whole, so nothing has to be checked on the way.
/// </summary>
internal sealed class FillIndexes
{
    private readonly NpgsqlConnection connection;
    private readonly IReadOnlyList<string> definitions;

    private FillIndexes(NpgsqlConnection connection, IReadOnlyList<string> definitions) =>
        (this.connection, this.definitions) = (connection, definitions);

    public static async Task<FillIndexes> DropAsync(NpgsqlConnection connection)
    {
        foreach (
            var setting in new[] { "max_wal_size = '8GB'", "checkpoint_timeout = '30min'", "synchronous_commit = off", "autovacuum = off" }
        )
        {
            await RunAsync(connection, $"alter system set {setting}");
        }

        await RunAsync(connection, "select pg_reload_conf()");
        await RunAsync(connection, "set session_replication_role = replica");
        var (names, definitions) = (new List<string>(), new List<string>());
        await using (
            var command = new NpgsqlCommand(
                """
                select i.indexrelid::regclass::text, pg_get_indexdef(i.indexrelid)
                from pg_index i join pg_class c on c.oid = i.indrelid join pg_namespace n on n.oid = c.relnamespace
                where n.nspname = 'public' and not exists (select from pg_constraint k where k.conindid = i.indexrelid)
                """,
                connection
            )
        )
        await using (var reader = await command.ExecuteReaderAsync())
        {
            while (await reader.ReadAsync())
            {
                names.Add(reader.GetString(0));
                definitions.Add(reader.GetString(1));
            }
        }

        foreach (var name in names)
        {
            await RunAsync(connection, $"drop index {name}");
        }

        return new(connection, definitions);
    }

    public async Task PutBackAsync()
    {
        await RunAsync(connection, "set maintenance_work_mem = '1GB'");
        foreach (var definition in definitions)
        {
            await RunAsync(connection, definition);
        }

        await RunAsync(connection, "vacuum (analyze)");
    }

    /// <summary>Sets the server back to how the service runs it, with everything on the disk and counted.</summary>
    public async Task SettleAsync()
    {
        await RunAsync(connection, "vacuum (analyze) film_fates, film_paths");
        await RunAsync(connection, "alter system reset all");
        await RunAsync(connection, "select pg_reload_conf()");
        await RunAsync(connection, "checkpoint");
    }

    private static async Task RunAsync(NpgsqlConnection connection, string sql)
    {
        await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
        await command.ExecuteNonQueryAsync();
    }
}
