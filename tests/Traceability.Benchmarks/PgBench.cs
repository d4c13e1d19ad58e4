using System.Diagnostics;
using System.Globalization;
using Npgsql;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;

namespace Traceability.Benchmarks;

/// <summary>
/// pgbench with the statements that the service runs for the first record of a part, over the same rows and with the same durability: who
/// signs, part and station, lock, standing, facts, surroundings, lot, inserts, updates, closure. It waits for each statement; the service
/// sends some together.
/// </summary>
internal static class PgBench
{
    public const int Transactions = 400;
    private const int WarmUp = 50;

    public static async Task<double> MedianMillisecondsAsync(string folder, int firstPart, string station, string lot)
    {
        var (token, ledgerBody) = await LookAtAsync(folder);
        var script = Path.Combine(folder, "record.sql");
        await File.WriteAllTextAsync(script, Script(token, station, lot, ledgerBody));
        var log = Path.Combine(folder, "pgbench_log");
        var info = new ProcessStartInfo(Find())
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (
            var argument in new[]
            {
                "-h",
                Path.Combine(folder, "run"),
                "-p",
                "5432",
                "-U",
                "traceability_owner",
                "-n",
                "-c",
                "1",
                "-M",
                "prepared",
                "-t",
                Transactions.ToString(CultureInfo.InvariantCulture),
                "-D",
                $"k={firstPart - 1}",
                "-f",
                script,
                "-l",
                $"--log-prefix={log}",
                "traceability",
            }
        )
        {
            info.ArgumentList.Add(argument);
        }

        using var process = Process.Start(info)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"pgbench: {errors} {await output}");
        }

        // Third column of pgbench's log: the time of each transaction in microseconds.
        var lines = Directory.EnumerateFiles(folder, "pgbench_log.*").SelectMany(File.ReadLines);
        return RecordsBenchmark.Median(lines.Select(l => double.Parse(l.Split(' ')[2], CultureInfo.InvariantCulture) / 1000).Skip(WarmUp));
    }

    /// <summary>A session to sign by, and how long the ledger's entry of such a record is.</summary>
    private static async Task<(string Token, int LedgerBody)> LookAtAsync(string folder)
    {
        await using var connection = new NpgsqlConnection(
            $"Host={Path.Combine(folder, "run")};Username=traceability_owner;Database=traceability;Pooling=false"
        );
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(
            """
            select (select token_hash from sign_in_sessions where expires_at > now() limit 1),
                (select length(e.body) from ledger_entries e join parts p on p.id = e.subject_id where p.serial = 'BEN-0'
                    and e.kind = 'make-record')
            """,
            connection
        );
        await using var reader = await command.ExecuteReaderAsync();
        await reader.ReadAsync();
        return (reader.GetString(0), reader.GetInt32(1));
    }

    private static string Script(string token, string station, string lot, int ledgerBody) =>
        $"""
            \set k :k + 1
            {Sql(ActorQuery.BySession, $"'{token}'", "now()")};
            begin;
            select p.part, p.known, '{Guid.Empty}' as person from ({Sql(
                DossierReader.FindSql,
                "'BEN-' || :k::text",
                $"'{station}'"
            )}) p (part, known) \gset
            {Sql(RecordBook.LockSql, "array[:part::uuid]")};
            {Sql(RecordBook.StandingsSql, "array[:part::uuid]")};
            {Sql(PartFactsQuery.Sql, "array[:part::uuid]")};
            {Sql(PlacementQuery.Sql, "array[:part::uuid]")};
            {Sql(DoubtQuery.Sql, "array[:part::uuid]")};
            select l.lot ->> 'id' as lot, gen_random_uuid() as attempt, gen_random_uuid() as fitting from ({Sql(
                LotQuery.FindSql,
                $"array['{lot}']"
            )}) l (lot, decision, holds) \gset
            insert into attempts (id, part_id, stage, number, station, by, occurred_at, recorded_at) values (:attempt::uuid, :part::uuid,
                'receipt', 1, '{station}', :person::uuid, now(), now());
            insert into readings (id, part_id, attempt_id, characteristic, value, digits, unit, nominal, upper, met, source, by,
                occurred_at, recorded_at) values (gen_random_uuid(), :part::uuid, :attempt::uuid, 'visibleFaults', 0, '0', 'count', 0, 0,
                    true, 'Entered', :person::uuid, now(), now());
            insert into fittings (id, part_id, attempt_id, position, lot_id, by, occurred_at, recorded_at) values (:fitting::uuid,
                :part::uuid, :attempt::uuid, 'panel', :lot::uuid, :person::uuid, now(), now());
            insert into attempt_endings (id, part_id, attempt_id, verdict, method, method_version, findings, failed_by_finding, by,
                occurred_at, recorded_at) values (gen_random_uuid(), :part::uuid, :attempt::uuid, 'Pass', 'entered-limits', 1,
                    array[]::text[], false, :person::uuid, now(), now());
            insert into stage_verdicts (attempt_id, part_id, serial, kind, model, stage, number, place, begun_at, ended_at, first,
                passed) values (:attempt::uuid, :part::uuid, 'BENCH-000000001', 'board-set', 'BENCH', 'receipt', 1, 'board-set', now(),
                    now(), true, true);
            insert into ledger_entries (id, subject_id, sequence, kind, body, previous_hash, hash, recorded_at) values (gen_random_uuid(),
                :part::uuid, 2, 'make-record', repeat('x', {ledgerBody}), repeat('0', 64), repeat('0', 64), now());
            update ledger_heads set sequence = 2, hash = repeat('0', 64) where subject_id = :part::uuid;
            update part_standings set stage = 'incoming-check', changed_at = now() where part_id = :part::uuid;
            {Sql(Closure.Fit, ":part::uuid", ":fitting::uuid", ":lot::uuid", "true", "now()")};
            commit;
            """;

    /// <summary>A statement on one line, as pgbench reads it, with its parameters in place.</summary>
    private static string Sql(string statement, params string[] parameters) =>
        parameters
            .Select((value, i) => ($"${i + 1}", value))
            .Aggregate(statement.ReplaceLineEndings(" "), (sql, p) => sql.Replace(p.Item1, p.value, StringComparison.Ordinal));

    private static string Find() =>
        new[] { "/usr/bin/pgbench", "/usr/local/bin/pgbench" }
            .Concat(
                Directory.Exists("/usr/lib/postgresql")
                    ? Directory.GetDirectories("/usr/lib/postgresql").OrderDescending().Select(d => Path.Combine(d, "bin", "pgbench"))
                    : []
            )
            .FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException("pgbench is not here: it comes with the PostgreSQL programs");
}
