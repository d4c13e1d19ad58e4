using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Domain.Ledger;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Book;

/// <summary>The first thing in a chain that does not agree, in words.</summary>
public sealed record AuditFinding(Guid SubjectId, long Sequence, string Problem);

/// <summary>
/// Recomputes the ledger from the tables: every chain link, and every fact named in it against its row. What was changed behind the
/// service's back, in the ledger or in a table, shows here.
/// </summary>
public sealed class LedgerAudit(WorkshopContext db)
{
    private static readonly Dictionary<string, (Type Type, string Table)> ByName = FactTables.All.ToDictionary(t => t.Type.Name, t => (t.Type, t.Table));

    /// <summary>Checks one subject's chain; null when everything agrees.</summary>
    public async Task<AuditFinding?> CheckAsync(Guid subjectId, CancellationToken cancellation)
    {
        var entries = await db.Set<LedgerEntry>().AsNoTracking().Where(e => e.SubjectId == subjectId).OrderBy(e => e.Sequence).ToListAsync(cancellation);
        var head = await db.Set<LedgerHead>().AsNoTracking().FirstOrDefaultAsync(h => h.SubjectId == subjectId, cancellation);
        var previous = LedgerPage.BeforeFirst;
        for (var i = 0; i < entries.Count; i++)
        {
            var entry = entries[i];
            var problem = ProblemWith(entry, i + 1, previous) ?? await FactProblemAsync(entry, cancellation);
            if (problem is not null)
            {
                return new(subjectId, entry.Sequence, problem);
            }

            previous = entry.Hash;
        }

        return head is null ? new(subjectId, 0, "the chain has no head")
            : head.Sequence != entries.Count || head.Hash != previous ? new(subjectId, head.Sequence, $"the chain should end at entry {head.Sequence}, but {entries.Count} entries are there")
            : null;
    }

    private static string? ProblemWith(LedgerEntry entry, long expected, string previous)
    {
        if (entry.Sequence != expected)
        {
            return $"entry {expected} is missing";
        }

        if (entry.PreviousHash != previous)
        {
            return $"entry {expected} does not follow the entry before it";
        }

        JsonNode? body;
        try
        {
            body = JsonNode.Parse(entry.Body);
        }
        catch (JsonException)
        {
            return $"the body of entry {expected} is no longer JSON";
        }

        return HashChain.Append(Digest.FromHex(previous), body).ToString() == entry.Hash && CanonicalJson.Text(body) == entry.Body
            ? null
            : $"the body of entry {expected} was changed: its hash is another";
    }

    private async Task<string?> FactProblemAsync(LedgerEntry entry, CancellationToken cancellation)
    {
        foreach (var named in JsonNode.Parse(entry.Body)!["facts"]!.AsArray())
        {
            var (type, table) = ByName[named!["fact"]!.GetValue<string>()];
            var id = named["id"]!.GetValue<Guid>();
            var row = await RowAsync(table, id, cancellation);
            if (row is null)
            {
                return $"{table} has no row {id}, which entry {entry.Sequence} names";
            }

            var fact = (Fact)JsonSerializer.Deserialize(row, type, FactJson.Row)!;
            if (CanonicalJson.Text(LedgerPage.FactNode(fact)) != CanonicalJson.Text(named))
            {
                return $"row {id} of {table} was changed: it says other than entry {entry.Sequence}";
            }
        }

        return null;
    }

    private async Task<string?> RowAsync(string table, Guid id, CancellationToken cancellation)
    {
        await db.Database.OpenConnectionAsync(cancellation);
        await using var command = new NpgsqlCommand($"select to_jsonb(t) from {table} t where id = $1", (NpgsqlConnection)db.Database.GetDbConnection());
        command.Parameters.Add(new() { Value = id });
        return await command.ExecuteScalarAsync(cancellation) as string;
    }
}
