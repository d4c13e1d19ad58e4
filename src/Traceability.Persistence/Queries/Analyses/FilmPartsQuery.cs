using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>
/// One diaphragm of a film lot: its fate, where it first failed and on which part, and what holds it now or held it last, until when it
/// did.
/// </summary>
public sealed record FollowedFilm(
    Guid Id,
    string Serial,
    string Model,
    DateTimeOffset FilmFittedAt,
    string? Builder,
    string Fate,
    string? FailedPlace,
    string? FailedStage,
    string? FailedPart,
    DateTimeOffset? FailedAt,
    string? Capsule,
    DateTimeOffset? OutOfCapsuleAt,
    string? Unit,
    DateTimeOffset? OutOfUnitAt,
    string? UnitState,
    DateTimeOffset? ShippedAt,
    string? CustomerReference
);

/// <summary>
/// The diaphragms of one film lot one by one, each followed through the facts; the numbers of <see cref="FilmLotQuery"/> lead here.
/// </summary>
public sealed class FilmPartsQuery(WorkshopContext db)
{
    /// <summary>$1 from, $2 to, $3 model, $4 lot, $5 place or stage.</summary>
    private const string PartsSql = $"""
        with cohort as materialized (
            select * from (
                {FilmSql.Cohort} and l.number = $4
                group by c.container_id, c.item_id
            ) c
            where c.since >= $1 and c.since < $2 and ($3::text is null or exists (select from parts p where p.id = c.diaphragm
                and p.model = $3))
        ), {FilmSql.Followed}, {FilmSql.Faults}, asked as (
            select * from faults where $5::text is null or place = $5 or stage = $5
        ), first_fault as (
            select distinct on (diaphragm) diaphragm, part_id, stage, place, at from asked order by diaphragm, at, part_id, stage
        ), healed as (
            select diaphragm, bool_and(healed) as healed from asked group by diaphragm
        ), reached as (
            select h.diaphragm from cohort h where $5::text is null and {FilmSql.IsThrough}
            union
            select diaphragm from judged where $5::text is not null and passed and (place = $5 or stage = $5)
            union
            select w.diaphragm from held w join shipments s on s.part_id = w.part where $5 = 'field' and s.occurred_at >= w.since
                and s.occurred_at < w.until
        )
        select p.serial, p.model, h.since, b.badge,
            case when f.diaphragm is null then case when r.diaphragm is null then 'in-work' else 'passed-first' end
                when r.diaphragm is not null and d.healed then 'passed-after-rework' else 'failed' end,
            f.place, f.stage, q.serial, f.at, k.serial, k.present_until, u.serial, u.present_until, s.state, x.occurred_at,
                x.customer_reference, p.id
        from cohort h
        join parts p on p.id = h.diaphragm
        left join people b on b.id = h.by
        left join first_fault f on f.diaphragm = h.diaphragm
        left join healed d on d.diaphragm = h.diaphragm
        left join reached r on r.diaphragm = h.diaphragm
        left join parts q on q.id = f.part_id
        left join lateral (
            select i.serial, c.container_id, c.present_until from containments c join parts i on i.id = c.container_id
                where c.item_id = h.diaphragm and not c.item_is_lot and c.depth = 1
            order by c.present_from desc limit 1) k on true
        left join lateral (
            select i.serial, c.container_id, c.present_until from containments c join parts i on i.id = c.container_id
                where c.item_id = h.diaphragm and not c.item_is_lot and c.depth = 2
            order by c.present_from desc limit 1) u on true
        left join part_standings s on s.part_id = u.container_id
        left join lateral (select occurred_at, customer_reference from shipments where part_id = u.container_id
            order by occurred_at desc limit 1) x on true
        order by f.at is null, p.serial
        """;

    /// <summary>The diaphragms of one lot, those that failed first.</summary>
    public Task<IReadOnlyList<FollowedFilm>> RunAsync(AnalysisFilter f, string lot, CancellationToken cancellation) =>
        db.RowsAsync(
            PartsSql,
            [f.From.UtcDateTime, f.To.UtcDateTime, f.Model, lot, f.Stage],
            r => new FollowedFilm(
                r.GetGuid(16),
                r.GetString(0),
                r.GetString(1),
                r.GetFieldValue<DateTimeOffset>(2),
                r.Text(3),
                r.GetString(4),
                r.Text(5),
                r.Text(6),
                r.Text(7),
                r.Moment(8),
                r.Text(9),
                r.Moment(10),
                r.Text(11),
                r.Moment(12),
                r.Text(13),
                r.Moment(14),
                r.Text(15)
            ),
            cancellation
        );
}
