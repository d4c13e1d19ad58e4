using System.Text.Json;
using Npgsql;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// All facts of some parts in one round trip: every fact table that names a part contributes its rows as JSON. One query with many
/// branches beats a query per table several times over, and a new kind of fact joins by being listed in <see cref="FactTables"/>.
/// </summary>
public static class PartFactsQuery
{
    private static readonly Dictionary<string, (Type Type, int Order)> ByTable = FactTables
        .All.Select((t, i) => (t.Table, t.Type, Order: i))
        .ToDictionary(t => t.Table, t => (t.Type, t.Order));

    /// <summary>The statement; the benchmark runs the same one beside the service.</summary>
    public static readonly string Sql = string.Join(
        "\nunion all\n",
        FactTables
            .All.Where(t => t.Type.GetProperty("PartId") is not null)
            .Select(t => $"select t.part_id, '{t.Table}', to_jsonb(t) from {t.Table} t where t.part_id = any($1)")
            .Append("select t.id, 'parts', to_jsonb(t) from parts t where t.id = any($1)")
            .Append(
                "select a.part_id, 'evidence', to_jsonb(t) from evidence t join attempts a on a.load_id = t.load_id where a.part_id"
                    + " = any($1)"
            )
            .Append(
                "select h.part_id, 'hold_releases', to_jsonb(t) from hold_releases t join holds h on h.id = t.hold_id where h.part_id"
                    + " = any($1)"
            )
    );

    /// <summary>The statement for these parts, to be sent in a batch.</summary>
    public static NpgsqlBatchCommand For(Guid[] partIds) => AboutParts.For(Sql, partIds);

    /// <summary>Reads the answer: the facts of each part in the order of recording. Parts without facts are left out.</summary>
    public static async Task<ILookup<Guid, Fact>> ReadAsync(NpgsqlDataReader reader, CancellationToken cancellation)
    {
        var rows = new List<(Guid PartId, Fact Fact, int Order)>();
        while (await reader.ReadAsync(cancellation))
        {
            var (type, order) = ByTable[reader.GetString(1)];
            rows.Add((reader.GetGuid(0), (Fact)JsonSerializer.Deserialize(reader.GetString(2), type, FactJson.Row)!, order));
        }

        return rows.OrderBy(r => r.Fact.RecordedAt).ThenBy(r => r.Order).ThenBy(r => r.Fact.Id).ToLookup(r => r.PartId, r => r.Fact);
    }
}
