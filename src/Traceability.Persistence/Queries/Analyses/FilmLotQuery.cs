using Traceability.Domain.Quality.FilmLots;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>What is kept apart when lots are compared.</summary>
public enum Stratum
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Who fitted the film.</summary>
    Builder,

    /// <summary>The week in which it was fitted.</summary>
    Week,
}

/// <summary>How far the film of a lot got: parts of one kind that hold it or held it, how many left the workshop and how many came back.</summary>
public sealed record LotReach(string Lot, string Kind, int Parts, int Shipped, int Returned);

/// <summary>One diaphragm of a film lot: its fate, where it first failed and on which part, and what holds it now or held it last, until when it did.</summary>
public sealed record FilmLotPart(
    string Serial, string Model, DateTimeOffset FilmFittedAt, string? Builder, string Fate, string? FailedPlace, string? FailedStage, string? FailedPart, DateTimeOffset? FailedAt,
    string? Capsule, DateTimeOffset? OutOfCapsuleAt, string? Unit, DateTimeOffset? OutOfUnitAt, string? UnitState, DateTimeOffset? ShippedAt, string? CustomerReference);

/// <summary>
/// Follows the film of every lot through the genealogy. A diaphragm is counted from the fitting of the film, and with everything that it is
/// inside for as long as it is inside: what happens to a capsule after its diaphragm was taken out is not the diaphragm's.
/// </summary>
public sealed class FilmLotQuery(WorkshopContext db)
{
    /// <summary>$1 from, $2 to, $3 model, $4 lot, $5 place or stage, $6 stratum, $7 time zone.</summary>
    private const string Followed = $"""
        with cohort as materialized (
            select c.container_id as diaphragm, l.number as lot, min(c.present_from) as since, max(coalesce(c.present_until, 'infinity')) as until, (array_agg(f.by order by f.id))[1] as by
            from lots l
            join containments c on c.item_id = l.id and c.item_is_lot and c.depth = 1
            join fittings f on f.id = c.fitting_id
            join parts p on p.id = c.container_id
            where l.kind = 'film' and c.present_from >= $1 and c.present_from < $2 and ($3::text is null or p.model = $3) and ($4::text is null or l.number = $4)
            group by c.container_id, l.number
        ), held as (
            select diaphragm, lot, diaphragm as part, since, until from cohort
            union all
            select h.diaphragm, h.lot, c.container_id, c.present_from, least(coalesce(c.present_until, 'infinity'), h.until)
            from cohort h join containments c on c.item_id = h.diaphragm and not c.item_is_lot
        ), judged as (
            select w.diaphragm, w.lot, a.part_id, p.kind, a.stage, a.number, e.occurred_at as at, {VerdictSql.Place} as place, {VerdictSql.Passed} as passed
            from held w
            join attempts a on a.part_id = w.part
            join attempt_endings e on e.attempt_id = a.id
            join parts p on p.id = a.part_id
            where e.verdict is not null and e.occurred_at >= w.since and e.occurred_at < w.until
        )
        """;

    private const string Fated = $"""
        {Followed}, faults as (
            select diaphragm, lot, part_id, stage, place, at, number from judged where not passed
            union all
            select w.diaphragm, w.lot, n.part_id, n.stage, case p.kind when 'unit' then 'final' else p.kind end, n.occurred_at, null
            from held w join nonconformities n on n.part_id = w.part join parts p on p.id = n.part_id
            where n.code not in ('stage-failed', 'stage-conditional', 'correction-turned-verdict', 'finding-after-correction') and n.occurred_at >= w.since and n.occurred_at < w.until
            union all
            select w.diaphragm, w.lot, r.part_id, null, 'field', r.occurred_at, null
            from held w join unit_returns r on r.part_id = w.part where r.occurred_at >= w.since and r.occurred_at < w.until
        ), asked as (
            select * from faults where $5::text is null or place = $5 or stage = $5
        ), first_fault as (
            select distinct on (diaphragm, lot) diaphragm, lot, part_id, stage, place, at from asked order by diaphragm, lot, at, part_id
        ), healed as (
            select diaphragm, lot, bool_and(exists (
                select from attempts a join attempt_endings e on e.attempt_id = a.id
                where a.part_id = asked.part_id and a.stage = asked.stage and a.number > asked.number and e.verdict = 'Pass')) as healed
            from asked group by diaphragm, lot
        ), reached as (
            select w.diaphragm, w.lot from held w join part_standings s on s.part_id = w.part where $5::text is null and w.part = w.diaphragm and s.finished
            union
            select diaphragm, lot from judged where $5::text is not null and passed and (place = $5 or stage = $5)
            union
            select w.diaphragm, w.lot from held w join shipments s on s.part_id = w.part where $5 = 'field' and s.occurred_at >= w.since and s.occurred_at < w.until
        )
        """;

    /// <summary>Diaphragms by lot, stratum, first failure and outcome.</summary>
    public const string FatesSql = $"""
        {Fated}
        select h.lot, case $6 when 'Week' then to_char(h.since at time zone $7, 'IYYY-"W"IW') when 'Builder' then coalesce(b.badge, '-') else '' end, f.place,
            r.diaphragm is not null and coalesce(d.healed, true), count(*)::int, max(f.at)
        from cohort h
        left join people b on b.id = h.by
        left join first_fault f on f.diaphragm = h.diaphragm and f.lot = h.lot
        left join healed d on d.diaphragm = h.diaphragm and d.lot = h.lot
        left join reached r on r.diaphragm = h.diaphragm and r.lot = h.lot
        group by 1, 2, 3, 4
        union all
        select number, '', null, false, 0, null from lots where kind = 'film' and received_at >= $1 and received_at < $2 and $3::text is null and ($4::text is null or number = $4)
        order by 1, 2, 3
        """;

    /// <summary>First verdicts of each stage, on the diaphragms and on what they are inside.</summary>
    public const string StagesSql = $"""
        {Followed}
        select lot, kind || '/' || stage, count(*)::int, (count(*) filter (where passed))::int
        from (
            select distinct on (lot, diaphragm, part_id, stage) lot, kind, stage, passed from judged
            where $5::text is null or place = $5 or stage = $5 order by lot, diaphragm, part_id, stage, number
        ) firsts
        group by 1, 2 order by 1, 2
        """;

    /// <summary>What the lots got into.</summary>
    public const string ReachSql = $"""
        {Followed}
        select w.lot, p.kind, count(distinct w.part)::int, count(distinct s.part_id)::int, count(distinct r.part_id)::int
        from held w
        join parts p on p.id = w.part
        left join shipments s on s.part_id = w.part and s.occurred_at >= w.since and s.occurred_at < w.until
        left join unit_returns r on r.part_id = w.part and r.occurred_at >= w.since and r.occurred_at < w.until
        where w.part <> w.diaphragm
        group by 1, 2
        """;

    /// <summary>The diaphragms one by one.</summary>
    public const string PartsSql = $"""
        {Fated}
        select p.serial, p.model, h.since, b.badge,
            case when f.diaphragm is null then case when r.diaphragm is null then 'in-work' else 'passed-first' end
                when r.diaphragm is not null and d.healed then 'passed-after-rework' else 'failed' end,
            f.place, f.stage, q.serial, f.at, k.serial, k.present_until, u.serial, u.present_until, s.state, x.occurred_at, x.customer_reference
        from cohort h
        join parts p on p.id = h.diaphragm
        left join people b on b.id = h.by
        left join first_fault f on f.diaphragm = h.diaphragm and f.lot = h.lot
        left join healed d on d.diaphragm = h.diaphragm and d.lot = h.lot
        left join reached r on r.diaphragm = h.diaphragm and r.lot = h.lot
        left join parts q on q.id = f.part_id
        left join lateral (
            select i.serial, c.container_id, c.present_until from containments c join parts i on i.id = c.container_id where c.item_id = h.diaphragm and not c.item_is_lot and c.depth = 1
            order by c.present_from desc limit 1) k on true
        left join lateral (
            select i.serial, c.container_id, c.present_until from containments c join parts i on i.id = c.container_id where c.item_id = h.diaphragm and not c.item_is_lot and c.depth = 2
            order by c.present_from desc limit 1) u on true
        left join part_standings s on s.part_id = u.container_id
        left join lateral (select occurred_at, customer_reference from shipments where part_id = u.container_id order by occurred_at desc limit 1) x on true
        order by f.at is null, p.serial
        """;

    /// <summary>The fates of all lots, counted.</summary>
    public Task<IReadOnlyList<LotFate>> FatesAsync(AnalysisFilter filter, Stratum stratum, CancellationToken cancellation) => db.RowsAsync(
        FatesSql, [.. Values(filter), filter.Stage, stratum.ToString(), filter.Zone], r => new LotFate(r.GetString(0), r.GetString(1), r.Text(2), r.GetBoolean(3), r.GetInt32(4)) { LastFailure = r.Moment(5) }, cancellation);

    /// <summary>First verdicts by lot and stage.</summary>
    public Task<IReadOnlyList<LotStageCount>> StagesAsync(AnalysisFilter filter, CancellationToken cancellation) => db.RowsAsync(
        StagesSql, [.. Values(filter), filter.Stage], r => new LotStageCount(r.GetString(0), r.GetString(1), r.GetInt32(2), r.GetInt32(3)), cancellation);

    /// <summary>What the lots got into.</summary>
    public Task<IReadOnlyList<LotReach>> ReachAsync(AnalysisFilter filter, CancellationToken cancellation) => db.RowsAsync(
        ReachSql, Values(filter), r => new LotReach(r.GetString(0), r.GetString(1), r.GetInt32(2), r.GetInt32(3), r.GetInt32(4)), cancellation);

    /// <summary>The diaphragms of one lot, those that failed first.</summary>
    public Task<IReadOnlyList<FilmLotPart>> PartsAsync(AnalysisFilter filter, string lot, CancellationToken cancellation) => db.RowsAsync(
        PartsSql, [.. Values(filter, lot), filter.Stage],
        r => new FilmLotPart(
            r.GetString(0), r.GetString(1), r.GetFieldValue<DateTimeOffset>(2), r.Text(3), r.GetString(4), r.Text(5), r.Text(6), r.Text(7), r.Moment(8),
            r.Text(9), r.Moment(10), r.Text(11), r.Moment(12), r.Text(13), r.Moment(14), r.Text(15)), cancellation);

    private static object?[] Values(AnalysisFilter f, string? lot = null) => [f.From.UtcDateTime, f.To.UtcDateTime, f.Model, lot];
}
