using Npgsql;
using Traceability.Domain.Gates;

namespace Traceability.Persistence.Queries;

/// <summary>What surrounds some parts: carrier, parent, and what is wrong with anything inside them. One round trip.</summary>
public static class SurroundingsQuery
{
    /// <summary>The statement; the benchmark runs the same one beside the service.</summary>
    public const string Sql = """
        with inside as (
            select distinct container_id, item_id, item_is_lot from containments where container_id = any($1) and present_until is null
        )
        select s.part_id, 'carrier', s.carrier_code, '' from part_standings s where s.part_id = any($1) and s.carrier_code is not null
        union all
        select s.part_id, 'parent', p.serial, '' from part_standings s join parts p on p.id = s.fitted_in_id where s.part_id = any($1)
        union all
        select i.container_id, 'Hold', coalesce(l.number, p.serial), h.reason
        from inside i join holds h on h.lot_id = i.item_id or h.part_id = i.item_id
        left join lots l on l.id = h.lot_id left join parts p on p.id = h.part_id
        where not exists (select from hold_releases r where r.hold_id = h.id)
        union all
        select i.container_id, 'Quarantine', l.number, d.reason
        from inside i join lots l on l.id = i.item_id
        cross join lateral (select state, reason from lot_decisions where lot_id = l.id order by recorded_at desc limit 1) d
        where i.item_is_lot and d.state = 'Quarantined'
        union all
        select i.container_id, 'Nonconformity', p.serial, 'a nonconformity is open'
        from inside i join part_standings s on s.part_id = i.item_id join parts p on p.id = i.item_id
        where not i.item_is_lot and s.state = 'nonconforming'
        """;

    /// <summary>The statement for these parts, to be sent in a batch.</summary>
    public static NpgsqlBatchCommand For(Guid[] partIds) => new(Sql) { Parameters = { new() { Value = partIds } } };

    /// <summary>Reads the answer; parts with nothing around them are left out.</summary>
    public static async Task<IReadOnlyDictionary<Guid, Surroundings>> ReadAsync(NpgsqlDataReader reader, CancellationToken cancellation)
    {
        var rows = new List<(Guid Part, string What, string Subject, string Reason)>();
        while (await reader.ReadAsync(cancellation))
        {
            rows.Add((reader.GetGuid(0), reader.GetString(1), reader.GetString(2), reader.GetString(3)));
        }

        return rows.GroupBy(r => r.Part).ToDictionary(g => g.Key, g => new Surroundings(
            g.FirstOrDefault(r => r.What == "carrier").Subject,
            g.FirstOrDefault(r => r.What == "parent").Subject,
            [.. g.Where(r => r.What is not ("carrier" or "parent")).Select(r => new InsideProblem(Enum.Parse<InsideProblemKind>(r.What), r.Subject, r.Reason))]));
    }
}
