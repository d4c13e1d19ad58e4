using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Domain.Ledger;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Book;

/// <summary>
/// Checks one subject's chain: that each entry follows the one before it, and that every fact it names stands in its table as it was
/// recorded.
/// </summary>
internal sealed class ChainAudit(WorkshopContext db)
{
    private static readonly Dictionary<string, (Type Type, string Table)> ByName = FactTables.All.ToDictionary(
        t => t.Type.Name,
        t => (t.Type, t.Table)
    );

    /// <summary>What disagrees. <paramref name="named"/> counts the rows that entries name and that are there, by table.</summary>
    public async Task<IReadOnlyList<AuditFinding>> CheckAsync(
        Guid subjectId,
        Dictionary<string, long> named,
        CancellationToken cancellation
    )
    {
        var entries = await db.Set<LedgerEntry>()
            .AsNoTracking()
            .Where(e => e.SubjectId == subjectId)
            .OrderBy(e => e.Sequence)
            .ToListAsync(cancellation);
        var head = await db.Set<LedgerHead>().AsNoTracking().FirstOrDefaultAsync(h => h.SubjectId == subjectId, cancellation);
        var findings = new List<AuditFinding>();
        var (previous, expected) = (LedgerChain.BeforeFirst, 1L);
        var facts = new List<(LedgerEntry Entry, JsonNode Fact)>();
        foreach (var entry in entries)
        {
            var body = BodyOf(entry);
            findings.AddRange(ProblemsWith(entry, body, expected, previous).Select(p => new AuditFinding(subjectId, entry.Sequence, p)));
            facts.AddRange(FactsOf(body).Select(f => (entry, f)));
            (previous, expected) = (entry.Hash, entry.Sequence + 1);
        }

        findings.AddRange(await FactProblemsAsync(facts, named, cancellation));
        if (head is null)
        {
            findings.Add(new(subjectId, 0, "the chain has no head"));
        }
        else if (head.Sequence != expected - 1 || head.Hash != previous)
        {
            findings.Add(
                new(
                    subjectId,
                    head.Sequence,
                    $"the chain should end at entry {head.Sequence} with the hash of its head, but it ends at entry {expected - 1}"
                )
            );
        }

        return findings;
    }

    /// <summary>The facts that an entry's body names, as far as it can be read.</summary>
    public static IEnumerable<JsonNode> FactsOf(JsonNode? body) =>
        body is JsonObject o && o["facts"] is JsonArray facts ? facts.OfType<JsonObject>() : [];

    /// <summary>An entry's body; null when it is no JSON any more.</summary>
    public static JsonNode? BodyOf(LedgerEntry entry)
    {
        try
        {
            return JsonNode.Parse(entry.Body);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static IEnumerable<string> ProblemsWith(LedgerEntry entry, JsonNode? body, long expected, string previous)
    {
        if (entry.Sequence != expected)
        {
            yield return entry.Sequence == expected + 1
                ? $"entry {expected} is missing"
                : $"entries {expected} to {entry.Sequence - 1} are missing";
        }
        else if (entry.PreviousHash != previous)
        {
            yield return $"entry {expected} does not follow the entry before it";
        }

        if (body is null)
        {
            yield return $"the body of entry {entry.Sequence} is no longer JSON";
        }
        else if (!HashAgrees(entry, body))
        {
            yield return $"the body of entry {entry.Sequence} was changed: its hash is another";
        }
        else if (!ColumnsAgree(entry, body))
        {
            yield return $"entry {entry.Sequence} says another subject, command or time beside its body than in it";
        }
    }

    private static bool HashAgrees(LedgerEntry entry, JsonNode body)
    {
        try
        {
            return HashChain.Append(Digest.FromHex(entry.PreviousHash), body).ToString() == entry.Hash
                && CanonicalJson.Text(body) == entry.Body;
        }
        catch (FormatException)
        {
            // A hash that is no hash, or a body that has no canonical form.
            return false;
        }
    }

    private static bool ColumnsAgree(LedgerEntry entry, JsonNode body) =>
        (string?)body["subject"] == entry.SubjectId.ToString()
        && (long?)body["sequence"] == entry.Sequence
        && (string?)body["command"] == entry.Kind
        && FactsOf(body).LastOrDefault()?["recordedAt"] is { } recordedAt
        && recordedAt.GetValue<DateTimeOffset>() == entry.RecordedAt;

    private async Task<List<AuditFinding>> FactProblemsAsync(
        IReadOnlyList<(LedgerEntry Entry, JsonNode Fact)> facts,
        Dictionary<string, long> named,
        CancellationToken cancellation
    )
    {
        var findings = new List<AuditFinding>();
        var seen = new HashSet<(string Table, Guid Id)>();
        foreach (var kind in facts.GroupBy(f => f.Fact["fact"]?.ToString() ?? ""))
        {
            if (!ByName.TryGetValue(kind.Key, out var known))
            {
                findings.AddRange(
                    kind.Select(f => new AuditFinding(
                        f.Entry.SubjectId,
                        f.Entry.Sequence,
                        $"entry {f.Entry.Sequence} names a fact of an unknown kind, '{kind.Key}'"
                    ))
                );
                continue;
            }

            var rows = await RowsAsync(known.Table, [.. kind.Select(IdOf)], cancellation);
            foreach (var (entry, fact) in kind)
            {
                var id = IdOf((entry, fact));
                var problem =
                    !seen.Add((known.Table, id)) ? $"entry {entry.Sequence} names row {id} of {known.Table} once more"
                    : !rows.TryGetValue(id, out var row) ? $"{known.Table} has no row {id}, which entry {entry.Sequence} names"
                    : !Says(row, known.Type, fact) ? $"row {id} of {known.Table} was changed: it says other than entry {entry.Sequence}"
                    : null;
                if (rows.ContainsKey(id))
                {
                    named[known.Table] = named.GetValueOrDefault(known.Table) + 1;
                }

                if (problem is not null)
                {
                    findings.Add(new(entry.SubjectId, entry.Sequence, problem));
                }
            }
        }

        return findings;
    }

    private static Guid IdOf((LedgerEntry Entry, JsonNode Fact) named) =>
        Guid.TryParse(named.Fact["id"]?.ToString(), out var id) ? id : Guid.Empty;

    private static bool Says(string row, Type type, JsonNode named)
    {
        try
        {
            return CanonicalJson.Text(LedgerChain.FactNode((Fact)JsonSerializer.Deserialize(row, type, FactJson.Row)!))
                == CanonicalJson.Text(named);
        }
        catch (Exception unreadable) when (unreadable is JsonException or FormatException)
        {
            // A word that no state has, say: whoever wrote it, the service did not.
            return false;
        }
    }

    private async Task<Dictionary<Guid, string>> RowsAsync(string table, Guid[] ids, CancellationToken cancellation)
    {
        var ask = new NpgsqlBatchCommand($"select id, to_jsonb(t) from {table} t where id = any($1)")
        {
            Parameters = { new() { Value = ids } },
        };
        return await OneRoundTrip.RunAsync(
            db,
            [ask],
            async reader =>
            {
                var rows = new Dictionary<Guid, string>();
                while (await reader.ReadAsync(cancellation))
                {
                    rows[reader.GetGuid(0)] = reader.GetString(1);
                }

                return rows;
            },
            cancellation
        );
    }
}
