using System.Diagnostics;
using System.Globalization;
using Traceability.Persistence.Queries;

namespace Traceability.Benchmarks;

/// <summary>pgbench with the statements that the service runs for one record: who signs, lock, facts, surroundings, inserts, closure, derived state.</summary>
internal static class PgBench
{
    private const int Transactions = 400;

    public static async Task<double> MedianMillisecondsAsync(string folder, int parts)
    {
        var script = Path.Combine(folder, "record.sql");
        await File.WriteAllTextAsync(script, Script(parts));
        var log = Path.Combine(folder, "pgbench_log");
        var info = new ProcessStartInfo(Find()) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in new[]
        {
            "-h", Path.Combine(folder, "run"), "-p", "5432", "-U", "traceability_owner", "-n", "-c", "1", "-M", "prepared",
            "-t", Transactions.ToString(CultureInfo.InvariantCulture), "-f", script, "-l", $"--log-prefix={log}", "traceability",
        })
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
        return RecordsBenchmark.Median(lines.Select(l => double.Parse(l.Split(' ')[2], CultureInfo.InvariantCulture) / 1000).Skip(50));
    }

    private static string Script(int parts) => $"""
        \set k random(0, {parts - 1})
        \set n random(1000, 2000000000)
        select person_id as person from sign_in_sessions where expires_at > now() limit 1 \gset
        select id, badge, name from people where id = :person::uuid;
        select * from role_grants where person_id = :person::uuid;
        select * from qualification_grants where person_id = :person::uuid;
        begin;
        select exists (select from stations where code = 'BENCH');
        select id as part from parts where serial = ('BEN-' || :k::text) \gset
        select * from ledger_heads where subject_id = :part::uuid for update;
        select * from part_standings where part_id = :part::uuid;
        {OneLine(PartFactsQuery.Sql.Replace("any($1)", "any(array[:part::uuid])", StringComparison.Ordinal))};
        {OneLine(SurroundingsQuery.Sql.Replace("any($1)", "any(array[:part::uuid])", StringComparison.Ordinal))};
        select l.id as lot from lots l where kind = 'board-panel' limit 1 \gset
        select state from lot_decisions where lot_id = :lot::uuid order by recorded_at desc limit 1;
        select reason from holds h where h.lot_id = :lot::uuid and not exists (select from hold_releases r where r.hold_id = h.id);
        select gen_random_uuid() as attempt, gen_random_uuid() as fitting \gset
        insert into attempts (id, part_id, stage, number, station, by, occurred_at, recorded_at) values (:attempt::uuid, :part::uuid, 'bench', :n::int, 'BENCH', :person::uuid, now(), now());
        insert into readings (id, part_id, attempt_id, characteristic, value, digits, unit, nominal, upper, met, source, by, occurred_at, recorded_at) values (gen_random_uuid(), :part::uuid, :attempt::uuid, 'visibleFaults', 0, '0', 'count', 0, 0, true, 'Entered', :person::uuid, now(), now());
        insert into fittings (id, part_id, attempt_id, position, lot_id, by, occurred_at, recorded_at) values (:fitting::uuid, :part::uuid, :attempt::uuid, 'panel', :lot::uuid, :person::uuid, now(), now());
        insert into attempt_endings (id, part_id, attempt_id, verdict, method, method_version, findings, failed_by_finding, by, occurred_at, recorded_at) values (gen_random_uuid(), :part::uuid, :attempt::uuid, 'Pass', 'entered-limits', 1, array[]::text[], false, :person::uuid, now(), now());
        insert into ledger_entries (id, subject_id, sequence, kind, body, previous_hash, hash, recorded_at) values (gen_random_uuid(), :part::uuid, :n::int, 'make-record', repeat('x', 1500), repeat('0', 64), repeat('0', 64), now());
        update ledger_heads set sequence = :n::int, hash = repeat('0', 64) where subject_id = :part::uuid;
        update part_standings set stage = 'incoming-check', changed_at = now() where part_id = :part::uuid;
        insert into containments (container_id, fitting_id, item_id, item_is_lot, depth, present_from) values (:part::uuid, :fitting::uuid, :lot::uuid, true, 1, now());
        commit;
        """;

    private static string OneLine(string sql) => sql.Replace('\n', ' ').Replace('\r', ' ');

    private static string Find() => new[] { "/usr/bin/pgbench", "/usr/local/bin/pgbench" }
        .Concat(Directory.Exists("/usr/lib/postgresql") ? Directory.GetDirectories("/usr/lib/postgresql").OrderDescending().Select(d => Path.Combine(d, "bin", "pgbench")) : [])
        .FirstOrDefault(File.Exists) ?? throw new InvalidOperationException("pgbench is not here: it comes with the PostgreSQL programs");
}
