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

    /// <summary>$1 diaphragms: what their rows in <c>film_fates</c> must say.</summary>
    private const string Made = $"""
        {Followed}, {FilmSql.Faults}, fault_groups as (
            select diaphragm, lot_id, place, stage, min(at) as at, (array_agg(part_id order by at, part_id))[1] as part_id, bool_and(healed) as healed
            from faults group by diaphragm, lot_id, place, stage
        ), ordered_faults as (
            select diaphragm, lot_id, jsonb_agg(jsonb_build_object('place', place, 'stage', stage, 'healed', healed) order by at, part_id, stage) as body, array_agg(at order by at, part_id, stage) as times
            from fault_groups group by diaphragm, lot_id
        ), steps as (
            select diaphragm, lot_id, jsonb_agg(jsonb_build_object('kind', kind, 'place', place, 'stage', stage, 'judged', n, 'passedFirst', m, 'passed', ever) order by kind, stage, place) as body
            from (
                select diaphragm, lot_id, kind, place, stage, count(*) filter (where first) as n, count(*) filter (where first and passed) as m, bool_or(passed) as ever
                from (select *, number = min(number) over (partition by diaphragm, lot_id, part_id, stage) as first from judged) j
                group by diaphragm, lot_id, kind, place, stage
            ) s
            group by diaphragm, lot_id
        ), reached as (
            select w.diaphragm, w.lot_id, jsonb_agg(jsonb_build_object('kind', p.kind, 'shipped', x.shipped, 'returned', x.returned) order by p.kind, x.shipped, x.returned) as body
            from (select distinct diaphragm, lot_id, part from held where part <> diaphragm) w
            join parts p on p.id = w.part
            cross join lateral (
                select (array_agg(f.part_id order by c.present_from, c.fitting_id))[1] as first,
                    bool_or(exists (select from shipments s where s.part_id = w.part and s.occurred_at >= c.present_from and s.occurred_at < coalesce(c.present_until, 'infinity'))) as shipped,
                    bool_or(exists (select from unit_returns r where r.part_id = w.part and r.occurred_at >= c.present_from and r.occurred_at < coalesce(c.present_until, 'infinity'))) as returned
                from containments c join fittings f on f.id = c.fitting_id
                where c.container_id = w.part and c.item_id = w.lot_id and c.item_is_lot
            ) x
            where x.first = w.diaphragm
            group by w.diaphragm, w.lot_id
        ), made as materialized (
            select h.diaphragm, h.lot_id, h.since, p.model, h.by, f.times, jsonb_build_object(
                'finished', coalesce(k.finished, false),
                'shipped', exists (select from held w join shipments s on s.part_id = w.part where w.diaphragm = h.diaphragm and w.lot_id = h.lot_id and s.occurred_at >= w.since and s.occurred_at < w.until),
                'steps', coalesce(s.body, '[]'), 'faults', coalesce(f.body, '[]'), 'reached', coalesce(r.body, '[]')) as body
            from cohort h
            join parts p on p.id = h.diaphragm
            left join part_standings k on k.part_id = h.diaphragm
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
        set since = excluded.since, model = excluded.model, fitted_by = excluded.fitted_by, path_id = excluded.path_id, failed_at = excluded.failed_at
        where (kept.since, kept.model, kept.fitted_by, kept.path_id, kept.failed_at) is distinct from (excluded.since, excluded.model, excluded.fitted_by, excluded.path_id, excluded.failed_at)
        """;

    /// <summary>Lot numbers and serials of the diaphragms whose kept fate is another, or whose fate nothing supports.</summary>
    public const string WrongFates = $"""
        {Made}
        select l.number, p.serial
        from made m
        full join (select k.*, p.body from film_fates k left join film_paths p on p.id = k.path_id where k.diaphragm_id = any($1)) k on k.diaphragm_id = m.diaphragm and k.lot_id = m.lot_id
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
        delete from film_fates k where k.diaphragm_id = any($1) and not exists (select from cohort h where h.diaphragm = k.diaphragm_id and h.lot_id = k.lot_id)
        """;
}
