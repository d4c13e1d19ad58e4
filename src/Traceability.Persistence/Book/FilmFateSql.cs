using Traceability.Persistence.Queries.Analyses;

namespace Traceability.Persistence.Book;

/// <summary>What the rows of <c>film_fates</c> of some diaphragms ($1) must say, by the facts; and bringing them to say it.</summary>
internal static class FilmFateSql
{
    private const string Followed = $"""
        with cohort as materialized (
            {FilmSql.Cohort} and c.container_id = any($1)
            group by c.container_id, c.item_id
        ), {FilmSql.Followed}
        """;

    /// <summary>
    /// $1 diaphragms: what their rows in <c>film_fates</c> must say. <c>ahead</c> are other films of the lot that came into a part before:
    /// a capsule with two diaphragms of a lot is judged once and counts once, with the film that was first among those inside at the
    /// verdict.
    /// </summary>
    private const string Made = $"""
        {Followed}, {FilmSql.Faults}, presence as (
            select w.diaphragm, w.lot_id, w.part, f.part_id as whose, c.present_from as since, coalesce(c.present_until, 'infinity')
                as until, c.fitting_id
            from (select distinct diaphragm, lot_id, part from held where part <> diaphragm) w
            join containments c on c.container_id = w.part and c.item_id = w.lot_id and c.item_is_lot
            join fittings f on f.id = c.fitting_id
        ), own as (
            select distinct on (diaphragm, lot_id, part) diaphragm, lot_id, part, since, fitting_id
            from presence where whose = diaphragm order by diaphragm, lot_id, part, since, fitting_id
        ), ahead as materialized (
            select o.diaphragm, o.lot_id, o.part, a.since, a.until
            from own o join presence a on a.diaphragm = o.diaphragm and a.lot_id = o.lot_id and a.part = o.part
            where a.whose <> o.diaphragm and (a.since, a.fitting_id) < (o.since, o.fitting_id)
        ), counted_faults as (
            select f.*, not exists (select from ahead a where a.diaphragm = f.diaphragm and a.lot_id = f.lot_id and a.part = f.part_id
                and f.at >= a.since and f.at < a.until) as counted from faults f
        ), fault_groups as (
            select diaphragm, lot_id, place, stage, min(at) as at, (array_agg(part_id
                order by at, part_id))[1] as part_id, bool_and(healed) as healed, bool_or(counted) as counted
            from counted_faults group by diaphragm, lot_id, place, stage
        ), ordered_faults as (
            select diaphragm, lot_id, jsonb_agg(jsonb_build_object('place', place, 'stage', stage, 'healed', healed, 'counted', counted)
                order by at, part_id, stage) as body,
                array_agg(at order by at, part_id, stage) as times
            from fault_groups group by diaphragm, lot_id
        ), events as (
            select diaphragm, lot_id, part_id, kind, stage, place, at, number, passed from judged
            union all
            select b.diaphragm, b.lot_id, b.part_id, p.kind, b.stage, b.place, b.at, null, false
            from broken b join parts p on p.id = b.part_id where b.number is null and b.stage is not null
        ), looks as (
            select diaphragm, lot_id, part_id, kind, stage, (array_agg(place
                order by number))[1] as place, min(at) as at, bool_or(passed) as ever,
                (not (array_agg(passed order by number))[1]) or bool_or(number is null) as failed
            from events group by diaphragm, lot_id, part_id, kind, stage
        ), counted_looks as (
            select l.*, not exists (
                select from ahead a where a.diaphragm = l.diaphragm and a.lot_id = l.lot_id and a.part = l.part_id and (
                    (l.at >= a.since and l.at < a.until)
                    or exists (select from stage_verdicts v where v.part_id = l.part_id and v.stage = l.stage and v.ended_at < l.at
                        and v.ended_at >= a.since and v.ended_at < a.until))) as counted
            from looks l
        ), steps as (
            select diaphragm, lot_id, jsonb_agg(jsonb_build_object('kind', kind, 'place', place, 'stage', stage, 'passed', ever,
                'reached', n, 'failed', m) order by kind, stage, place) as body
            from (
                select diaphragm, lot_id, kind, place, stage, bool_or(ever) as ever, count(*) filter (where counted)
                    as n, count(*) filter (where counted and failed) as m
                from counted_looks group by diaphragm, lot_id, kind, place, stage
            ) s
            group by diaphragm, lot_id
        ), reached as (
            select x.diaphragm, x.lot_id, jsonb_agg(jsonb_build_object('kind', p.kind, 'shipped', x.shipped, 'returned', x.returned)
                order by p.kind, x.shipped, x.returned) as body
            from (
                select diaphragm, lot_id, part, (array_agg(whose order by since, fitting_id))[1] as first,
                    bool_or(exists (select from shipments s where s.part_id = part and s.occurred_at >= since
                        and s.occurred_at < until)) as shipped,
                    bool_or(exists (select from unit_returns r where r.part_id = part and r.occurred_at >= since
                        and r.occurred_at < until)) as returned
                from presence group by diaphragm, lot_id, part
            ) x
            join parts p on p.id = x.part
            where x.first = x.diaphragm
            group by x.diaphragm, x.lot_id
        ), made as materialized (
            select h.diaphragm, h.lot_id, h.since, p.model, h.by, f.times, jsonb_build_object(
                'through', {FilmSql.IsThrough},
                'shipped', exists (select from held w join shipments s on s.part_id = w.part where w.diaphragm = h.diaphragm
                    and w.lot_id = h.lot_id and s.occurred_at >= w.since and s.occurred_at < w.until),
                'steps', coalesce(s.body, '[]'), 'faults', coalesce(f.body, '[]'), 'reached', coalesce(r.body, '[]')) as body
            from cohort h
            join parts p on p.id = h.diaphragm
            left join steps s on s.diaphragm = h.diaphragm and s.lot_id = h.lot_id
            left join ordered_faults f on f.diaphragm = h.diaphragm and f.lot_id = h.lot_id
            left join reached r on r.diaphragm = h.diaphragm and r.lot_id = h.lot_id
        )
        """;

    public const string KeepFates = $"""
        {Made}, paths as (
            insert into film_paths (id, body) select distinct md5(body::text)::uuid, body from made on conflict do nothing
        )
        insert into film_fates as kept (diaphragm_id, lot_id, since, model, fitted_by, path_id, failed_at)
        select diaphragm, lot_id, since, model, by, md5(body::text)::uuid, times from made
        on conflict (diaphragm_id, lot_id) do update
        set since = excluded.since, model = excluded.model, fitted_by = excluded.fitted_by, path_id = excluded.path_id,
            failed_at = excluded.failed_at
        where (kept.since, kept.model, kept.fitted_by, kept.path_id, kept.failed_at) is distinct
            from (excluded.since, excluded.model, excluded.fitted_by, excluded.path_id, excluded.failed_at)
        """;

    /// <summary>Lot numbers and serials of the diaphragms whose kept fate is another, or whose fate nothing supports.</summary>
    public const string WrongFates = $"""
        {Made}
        select l.number, p.serial
        from made m
        full join (select k.*, p.body from film_fates k left join film_paths p on p.id = k.path_id
            where k.diaphragm_id = any($1)) k on k.diaphragm_id = m.diaphragm and k.lot_id = m.lot_id
        join lots l on l.id = coalesce(m.lot_id, k.lot_id)
        join parts p on p.id = coalesce(m.diaphragm, k.diaphragm_id)
        where (m.since, m.model, m.by, m.times, m.body) is distinct from (k.since, k.model, k.fitted_by, k.failed_at, k.body)
        order by 1, 2
        """;

    /// <summary>Takes away what nothing supports, and paths whose body was changed, so that keeping puts the right rows there.</summary>
    public const string Clear = $"""
        {Followed}, paths as (
            delete from film_paths where id <> md5(body::text)::uuid
        )
        delete from film_fates k where k.diaphragm_id = any($1) and not exists (select from cohort h where h.diaphragm = k.diaphragm_id
            and h.lot_id = k.lot_id)
        """;
}
