using System.Text.Json;
using Npgsql;
using Traceability.Domain.Gates;

namespace Traceability.Persistence.Queries;

/// <summary>
/// What surrounds some parts: carrier, parent, the outermost part around them and what became of that, and what is wrong with anything
/// inside them - of a film lot, which is a part under its lot's id, with itself. One round trip.
/// </summary>
public static class PlacementQuery
{
    /// <summary>The statement; the benchmark runs the same one beside the service.</summary>
    public static readonly string Sql = $"""
        with inside as materialized (
            select distinct container_id, item_id, item_is_lot from containments where container_id = any($1) and present_until is null
        ), lots_inside as materialized (
            select i.item_id, l.number, d.reason
            from (select distinct item_id from inside where item_is_lot) i join lots l on l.id = i.item_id
            cross join lateral (select state, reason from lot_decisions where lot_id = l.id order by recorded_at desc, id desc limit 1) d
            where d.state = 'Quarantined'
        ), outermost as (
            select distinct on (item_id) item_id, container_id from containments
            where item_id = any($1) and not item_is_lot and present_until is null order by item_id, depth desc
        )
        select s.part_id, 'carrier', s.carrier_code, '' from part_standings s where s.part_id = any($1) and s.carrier_code is not null
        union all
        select s.part_id, 'parent', p.serial, '' from part_standings s join parts p on p.id = s.fitted_in_id where s.part_id = any($1)
        union all
        select o.item_id, 'outermost', p.serial, {ExitSql("o.container_id")}::text from outermost o join parts p on p.id = o.container_id
        union all
        select i.container_id, 'Hold', l.number, h.reason from inside i join holds h on h.lot_id = i.item_id join lots l on l.id = h.lot_id
        where i.item_is_lot and not exists (select from hold_releases r where r.hold_id = h.id)
        union all
        select i.container_id, 'Hold', p.serial, h.reason from inside i join holds h on h.part_id = i.item_id
            join parts p on p.id = h.part_id
        where not i.item_is_lot and not exists (select from hold_releases r where r.hold_id = h.id)
        union all
        select i.container_id, 'Quarantine', q.number, q.reason from lots_inside q join inside i on i.item_id = q.item_id and i.item_is_lot
        union all
        select i.container_id, 'Nonconformity', p.serial, 'a nonconformity is open'
        from inside i join part_standings s on s.part_id = i.item_id join parts p on p.id = i.item_id
        where not i.item_is_lot and s.state = 'nonconforming'
        union all
        select h.lot_id, 'itself Hold', '', h.reason from holds h where h.lot_id = any($1) and not exists (select from hold_releases r
            where r.hold_id = h.id)
        union all
        select l.id, 'itself Quarantine', '', coalesce(d.reason, '')
        from lots l left join lateral (select state, reason from lot_decisions where lot_id = l.id
            order by recorded_at desc, id desc limit 1) d on true
        where l.id = any($1) and coalesce(d.state, 'Quarantined') = 'Quarantined'
        """;

    /// <summary>How the part with that id left use or the house, as JSON of an <see cref="Exit"/>.</summary>
    internal static string ExitSql(string id) =>
        $"""
            jsonb_build_object(
                'scrapped', (select d.reason from dispositions d where d.part_id = {id} and d.kind = 'Scrap'
                    order by d.recorded_at desc limit 1),
                'departure', (
                    select jsonb_build_object('at', s.occurred_at, 'customer_reference', s.customer_reference, 'returned_at',
                        r.occurred_at, 'complaint', r.complaint)
                    from shipments s
                    left join lateral (
                        select u.occurred_at, u.complaint from unit_returns u where u.part_id = s.part_id and u.recorded_at > s.recorded_at
                            order by u.recorded_at desc limit 1
                    ) r on true
                    where s.part_id = {id} order by s.recorded_at desc limit 1))
            """;

    /// <summary>Reads what <see cref="ExitSql"/> gave.</summary>
    internal static Exit ExitOf(string? json) => json is null ? Exit.None : JsonSerializer.Deserialize<Exit>(json, FactJson.Row)!;

    /// <summary>The statement for these parts, to be sent in a batch.</summary>
    public static NpgsqlBatchCommand For(Guid[] partIds) => AboutParts.For(Sql, partIds);

    /// <summary>Reads the answer; parts with nothing around them are left out.</summary>
    public static async Task<IReadOnlyDictionary<Guid, PartPlacement>> ReadAsync(NpgsqlDataReader reader, CancellationToken cancellation)
    {
        var rows = new List<Row>();
        while (await reader.ReadAsync(cancellation))
        {
            rows.Add(new(reader.GetGuid(0), reader.GetString(1), reader.GetString(2), reader.GetString(3)));
        }

        return rows.GroupBy(r => r.Part).ToDictionary(g => g.Key, g => Of([.. g]));
    }

    private static PartPlacement Of(IReadOnlyList<Row> rows)
    {
        var outermost = rows.FirstOrDefault(r => r.What == "outermost");
        return new(Named("carrier"), Named("parent"), Problems(""))
        {
            Outermost = outermost is null ? null : new(outermost.Subject, ExitOf(outermost.Reason)),
            OnItself = Problems("itself "),
        };

        string? Named(string what) => rows.FirstOrDefault(r => r.What == what)?.Subject;

        IReadOnlyList<InsideProblem> Problems(string prefix) =>
            [
                .. from kind in Enum.GetValues<InsideProblemKind>()
                from row in rows
                where row.What == prefix + kind
                orderby kind, row.Subject, row.Reason
                select new InsideProblem(kind, row.Subject, row.Reason),
            ];
    }

    private sealed record Row(Guid Part, string What, string Subject, string Reason);
}
