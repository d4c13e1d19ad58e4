using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>
/// Of the units that left the workshop with film of a lot, those that are with no customer now, or that hold none of it any more. They came
/// back first, and the way of their film says so: only films with such a way are followed, a few in a hundred.
/// </summary>
public sealed class FilmBackQuery(WorkshopContext db)
{
    /// <summary>
    /// $1 from, $2 to, $3 model. A unit counts with the film of the lot that came into it first, as <see cref="FilmLotQuery"/> counts it.
    /// </summary>
    public const string Sql = """
        with paths as materialized (
            select p.id from film_paths p
            where exists (select from jsonb_array_elements(p.body -> 'reached') r where r ->> 'kind' = 'unit'
                and (r ->> 'shipped')::boolean and (r ->> 'returned')::boolean)
        ), films as materialized (
            select f.diaphragm_id, f.lot_id from film_fates f join paths p on p.id = f.path_id where f.since >= $1 and f.since < $2
                and ($3::text is null or f.model = $3)
        ), units as (
            select distinct f.lot_id, f.diaphragm_id, c.container_id as unit
            from films f join containments c on c.item_id = f.diaphragm_id and not c.item_is_lot join parts p on p.id = c.container_id
                and p.kind = 'unit'
            where exists (select from shipments s where s.part_id = c.container_id and s.occurred_at >= c.present_from
                and s.occurred_at < coalesce(c.present_until, 'infinity'))
        )
        select u.lot_id, count(*)::int
        from units u join part_standings s on s.part_id = u.unit
        where u.diaphragm_id = (
                select f.part_id from containments c join fittings f on f.id = c.fitting_id where c.container_id = u.unit
                    and c.item_id = u.lot_id and c.item_is_lot
                order by c.present_from, c.fitting_id limit 1)
            and not (s.state = 'shipped' and exists (select from containments c where c.container_id = u.unit and c.item_id = u.lot_id
                and c.item_is_lot and c.present_until is null))
        group by u.lot_id
        """;

    /// <summary>How many, by film lot; lots without any are left out.</summary>
    public async Task<IReadOnlyDictionary<Guid, int>> RunAsync(AnalysisFilter filter, CancellationToken cancellation) =>
        (
            await db.RowsAsync(
                Sql,
                [filter.From.UtcDateTime, filter.To.UtcDateTime, filter.Model],
                r => (Lot: r.GetGuid(0), Units: r.GetInt32(1)),
                cancellation
            )
        ).ToDictionary(r => r.Lot, r => r.Units);
}
