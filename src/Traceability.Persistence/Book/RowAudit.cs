using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Book;

/// <summary>
/// Finds rows of fact tables that no ledger entry names: put there behind the service's back. A table is first only counted, because naming
/// every row of a large store takes gigabytes; where the count is not that of the named rows, they are looked for one by one.
/// </summary>
internal sealed class RowAudit(WorkshopContext db)
{
    /// <summary>Rows of all tables; <paramref name="named"/> says how many of each the chains name.</summary>
    public async Task<IReadOnlyList<AuditFinding>> CheckAllAsync(IReadOnlyDictionary<string, long> named, CancellationToken cancellation)
    {
        var findings = new List<AuditFinding>();
        foreach (var (type, table) in FactTables.All)
        {
            if ((await ReadAsync<long>($"select count(*) from {table}", null, cancellation))[0] != named.GetValueOrDefault(table))
            {
                var rows = await ReadAsync<Guid>($"select id from {table} order by id", null, cancellation);
                findings.AddRange(Unnamed(table, rows, await NamedAsync(type, db.Set<LedgerEntry>(), cancellation)));
            }
        }

        return findings;
    }

    /// <summary>Rows about one part.</summary>
    public async Task<IReadOnlyList<AuditFinding>> CheckPartAsync(Guid partId, CancellationToken cancellation)
    {
        var chain = db.Set<LedgerEntry>().Where(e => e.SubjectId == partId);
        var findings = new List<AuditFinding>();
        foreach (
            var (type, table) in FactTables.All.Where(t => t.Type == typeof(Part) || t.Type.GetProperty(nameof(Reading.PartId)) is not null)
        )
        {
            var key = type == typeof(Part) ? "id" : "part_id";
            var rows = await ReadAsync<Guid>($"select id from {table} where {key} = $1 order by id", partId, cancellation);
            findings.AddRange(Unnamed(table, rows, await NamedAsync(type, chain, cancellation)));
        }

        return findings;
    }

    private Task<List<T>> ReadAsync<T>(string sql, Guid? about, CancellationToken cancellation)
    {
        var ask = new NpgsqlBatchCommand(sql);
        if (about is { } id)
        {
            ask.Parameters.Add(new() { Value = id });
        }

        return OneRoundTrip.RunAsync(
            db,
            [ask],
            async reader =>
            {
                var values = new List<T>();
                while (await reader.ReadAsync(cancellation))
                {
                    values.Add(await reader.GetFieldValueAsync<T>(0, cancellation));
                }

                return values;
            },
            cancellation
        );
    }

    private static IEnumerable<AuditFinding> Unnamed(string table, IEnumerable<Guid> rows, HashSet<Guid> named) =>
        rows.Where(id => !named.Contains(id))
            .Select(id => new AuditFinding(null, 0, $"row {id} of {table} is named by no entry of the ledger"));

    private static async Task<HashSet<Guid>> NamedAsync(Type type, IQueryable<LedgerEntry> entries, CancellationToken cancellation)
    {
        var named = new HashSet<Guid>();
        var mention = $"\"fact\":\"{type.Name}\"";
        await foreach (
            var entry in entries.AsNoTracking().Where(e => e.Body.Contains(mention)).AsAsyncEnumerable().WithCancellation(cancellation)
        )
        {
            foreach (
                var fact in ChainAudit.FactsOf(ChainAudit.BodyOf(entry)).OfType<JsonObject>().Where(f => (string?)f["fact"] == type.Name)
            )
            {
                if (Guid.TryParse(fact["id"]?.ToString(), out var id))
                {
                    named.Add(id);
                }
            }
        }

        return named;
    }
}
