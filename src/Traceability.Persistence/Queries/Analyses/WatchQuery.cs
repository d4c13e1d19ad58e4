using Traceability.Domain.Quality.Notices;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>
/// The latest values at every stage at once, in one statement, so that the desk can watch all characteristics without asking for each.
/// </summary>
public sealed class WatchQuery(WorkshopContext db)
{
    /// <summary>
    /// $1 stages, $2 from, $3 how many of the latest verdicts of a stage. The values as they count now, in the order of work; bounds are
    /// left out. The number of verdicts is bounded so that the statement costs the same in a workshop of a million units.
    /// </summary>
    public const string PointsSql = """
        select p.kind, p.model, s.stage, r.characteristic, r.id, p.serial, a.occurred_at, greatest(a.ended_at, c.recorded_at),
            coalesce(c.value, r.value)::float8
        from unnest($1::text[]) s (stage)
        cross join lateral (
            select a.id, a.part_id, a.occurred_at, e.recorded_at as ended_at
            from attempts a join attempt_endings e on e.attempt_id = a.id
            where a.stage = s.stage and a.occurred_at >= $2 and e.verdict is not null
            order by a.occurred_at desc, a.id desc limit $3
        ) a
        join parts p on p.id = a.part_id
        join readings r on r.attempt_id = a.id
        left join lateral (select value, digits, recorded_at from corrections c where c.reading_id = r.id
            order by c.recorded_at desc, c.id desc limit 1) c on true
        where coalesce(c.digits, r.digits) not like '>%'
        order by a.occurred_at, a.id, r.id
        """;

    /// <summary>The charts of everything that was read at these stages.</summary>
    public async Task<IReadOnlyList<WatchedChart>> ChartsAsync(
        IEnumerable<string> stages,
        DateTimeOffset from,
        int verdicts,
        CancellationToken cancellation
    )
    {
        var rows = await db.RowsAsync(
            PointsSql,
            [stages.ToArray(), from.UtcDateTime, verdicts],
            r =>
                (
                    Chart: (r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3)),
                    Point: new WatchedPoint(
                        r.GetGuid(4),
                        r.GetString(5),
                        r.GetFieldValue<DateTimeOffset>(6),
                        r.GetFieldValue<DateTimeOffset>(7),
                        r.GetDouble(8)
                    )
                ),
            cancellation
        );
        return
        [
            .. rows.GroupBy(r => r.Chart, r => r.Point)
                .Select(g => new WatchedChart(g.Key.Item1, g.Key.Item2, g.Key.Item3, g.Key.Item4, [.. g])),
        ];
    }
}
