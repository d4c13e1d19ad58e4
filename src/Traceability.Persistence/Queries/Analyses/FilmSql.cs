namespace Traceability.Persistence.Queries.Analyses;

/// <summary>
/// Follows the film of a lot through the genealogy. A diaphragm is counted from the fitting of the film, and with everything that it is
/// inside for as long as it is inside: what happens to a capsule after its diaphragm was taken out is not the diaphragm's.
/// </summary>
internal static class FilmSql
{
    /// <summary>
    /// The films: one row for each lot of film that a diaphragm holds or held. Ends with a <c>where</c> that the statement completes.
    /// </summary>
    public const string Cohort = """
        select c.container_id as diaphragm, c.item_id as lot_id, min(c.present_from) as since, max(coalesce(c.present_until, 'infinity'))
            as until, (array_agg(f.by order by f.id))[1] as by
        from containments c
        join lots l on l.id = c.item_id and l.kind = 'film'
        join fittings f on f.id = c.fitting_id
        where c.item_is_lot and c.depth = 1
        """;

    /// <summary>After <c>cohort</c>: what holds or held each film, itself included; and every verdict meanwhile.</summary>
    public const string Followed = """
        held as (
            select diaphragm, lot_id, diaphragm as part, since, until from cohort
            union all
            select h.diaphragm, h.lot_id, c.container_id, c.present_from, least(coalesce(c.present_until, 'infinity'), h.until)
            from cohort h join containments c on c.item_id = h.diaphragm and not c.item_is_lot
        ), judged as (
            select w.diaphragm, w.lot_id, v.part_id, v.kind, v.stage, v.number, v.ended_at as at, v.place, v.passed
            from held w join stage_verdicts v on v.part_id = w.part
            where v.ended_at >= w.since and v.ended_at < w.until
        )
        """;

    /// <summary>
    /// After <see cref="Followed"/>: what went wrong meanwhile - verdicts, nonconformities reported by hand, returns - and whether a later
    /// pass of the same part at the same stage healed it.
    /// </summary>
    public const string Faults = """
        broken as (
            select diaphragm, lot_id, part_id, stage, place, at, number from judged where not passed
            union all
            select w.diaphragm, w.lot_id, n.part_id, n.stage,
                coalesce((select min(v.place) from stage_verdicts v where v.part_id = n.part_id and v.stage = n.stage), case p.kind
                    when 'unit' then 'final' else p.kind end), n.occurred_at, null
            from held w join nonconformities n on n.part_id = w.part join parts p on p.id = n.part_id
            where n.code not in ('stage-failed', 'stage-conditional', 'correction-turned-verdict', 'finding-after-correction')
                and n.occurred_at >= w.since and n.occurred_at < w.until
            union all
            select w.diaphragm, w.lot_id, r.part_id, null, 'field', r.occurred_at, null
            from held w join unit_returns r on r.part_id = w.part where r.occurred_at >= w.since and r.occurred_at < w.until
        ), faults as (
            select b.*, exists (select from stage_verdicts v where v.part_id = b.part_id and v.stage = b.stage and v.number > b.number
                and v.passed) as healed
            from broken b
        )
        """;

    /// <summary>
    /// Condition on the film <c>h</c> of a cohort: it is in a unit that has passed its last stage, or it left the workshop in a unit. After
    /// <see cref="Followed"/>.
    /// </summary>
    public const string IsThrough = """
        exists (
            select from held w join parts p on p.id = w.part and p.kind = 'unit'
            where w.diaphragm = h.diaphragm and w.lot_id = h.lot_id and (
                (w.until = 'infinity' and exists (select from part_standings k where k.part_id = w.part and k.finished))
                or exists (select from shipments s where s.part_id = w.part and s.occurred_at >= w.since and s.occurred_at < w.until)))
        """;
}
