using Traceability.Domain.Quality.Causes;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>
/// A failure that is asked about: not passed at the stage; or, with a characteristic, that reading not met; or, with a code, that
/// nonconformity.
/// </summary>
public sealed record FailureAsked(string Stage, string? Characteristic, string? Code);

/// <summary>
/// One part at the stage: what came out. <c>Value</c> is null without a characteristic, and where what was read is only a bound.
/// </summary>
public sealed record Outcome(Guid AttemptId, string Serial, DateTimeOffset At, bool Failed, decimal? Value, bool Bound, string? Unit);

/// <summary>
/// What came out for all parts of a question, and the circumstances of those that were looked at, row by row. They are all, unless
/// there are more than <see cref="CauseQuery.Most"/>.
/// </summary>
public sealed record FactorsFound(IReadOnlyList<Outcome> All, IReadOnlyList<Outcome> Outcomes, IReadOnlyList<FactorColumn> Factors);

/// <summary>
/// Everything that the facts hold about how each part came to a stage: what is inside it and where that came from, who worked on it and on
/// what is inside it, where, with what, in which load and place, when, and in what air. Each part counts once, by its first verdict at the
/// stage.
/// </summary>
public sealed class CauseQuery(WorkshopContext db)
{
    /// <summary>
    /// So many parts have their circumstances looked up, which takes most of a second; how they are chosen is said by
    /// <see cref="CaseSample"/>.
    /// </summary>
    public const int Most = 2000;

    private const int Bands = 4;

    /// <summary>What came out: $1 from, $2 to, $3 model, $4 stage, $5 characteristic, $6 code.</summary>
    public const string OutcomesSql = """
        select v.attempt_id, v.serial, v.begun_at,
            case when $6::text is not null then exists (select from nonconformities x where x.part_id = v.part_id
                and x.attempt_id = v.attempt_id and x.code = $6)
                when $5::text is not null then not r.met else not v.passed end,
            r.value, coalesce(r.bound, false), r.unit
        from stage_verdicts v
        left join lateral (
            select coalesce(c.value, r.value) as value, coalesce(c.met, r.met) as met, coalesce(c.digits, r.digits) like '>%'
                as bound, r.unit
            from readings r
            left join lateral (select value, met, digits from corrections c where c.reading_id = r.id
                order by c.recorded_at desc, c.id desc limit 1) c on true
            where $5::text is not null and r.attempt_id = v.attempt_id and r.characteristic = $5
            order by r.id limit 1
        ) r on true
        where v.stage = $4 and v.begun_at >= $1 and v.begun_at < $2 and ($3::text is null or v.model = $3) and v.first
            and ($5::text is null or r.met is not null)
        order by v.begun_at, v.attempt_id
        """;

    /// <summary>
    /// The circumstances of some attempts, a column for each: the attempts that have it, and their levels or values. $1 the ids, $2 time
    /// zone, $3 characteristic (left out of the ambient readings).
    /// </summary>
    public const string FactorsSql = """
        with asked as materialized (
            select k.n, a.id, a.part_id, a.stage, a.station, a.load_id, a.by, a.occurred_at, v.ended_at, v.model, v.kind, p.route_id
            from unnest($1::uuid[]) with ordinality k (id, n)
            join stage_verdicts v on v.attempt_id = k.id
            join attempts a on a.id = k.id
            join parts p on p.id = a.part_id
        ), inside as (
            select n, part_id as part, kind, stage as asked_stage, occurred_at, ended_at, '' as of from asked
            union all
            select k.n, c.item_id, p.kind, k.stage, k.occurred_at, k.ended_at, ' of ' || p.kind
            from asked k
            join containments c on c.container_id = k.part_id and not c.item_is_lot and c.present_from <= k.ended_at
                and (c.present_until is null or c.present_until > k.ended_at)
            join parts p on p.id = c.item_id
        ), steps as (
            select distinct on (i.n, i.part, a.stage) i.n, ' at ' || i.kind || ' ' || a.stage as at, a.id, a.station, a.load_id, a.by
            from inside i
            join stage_verdicts v on v.part_id = i.part and v.begun_at <= i.occurred_at
            join attempts a on a.id = v.attempt_id
            where not (i.of = '' and a.stage = i.asked_stage)
            order by i.n, i.part, a.stage, a.number desc
        ), works as (
            select n, '' as at, id, station, load_id, by from asked
            union all
            select n, at, id, station, load_id, by from steps
        ), corrected as materialized (
            select distinct on (reading_id) reading_id, value from corrections where part_id in (select part from inside)
                order by reading_id, recorded_at desc, id desc
        ), found as (
            select w.n, 'builder' || w.at as factor, b.badge as level, null::numeric as value from works w join people b on b.id = w.by
            union all
            select n, 'station' || at, station, null from works
            union all
            select w.n, u.instrument_kind || w.at, u.instrument_code, null from works w join instrument_uses u on u.attempt_id = w.id
            union all
            select w.n, 'load' || w.at, to_char(l.occurred_at at time zone $2, 'YYYY-MM-DD HH24:MI') || ' ' || l.station, null from works w
                join loads l on l.id = w.load_id
            union all
            select k.n, 'place in the load', (select count(*) from attempts o where o.load_id = k.load_id and o.id <= k.id)::text, null
                from asked k where k.load_id is not null
            union all
            select n, 'weekday', to_char(occurred_at at time zone $2, 'FMDay'), null from asked
            union all
            select n, 'week', to_char(occurred_at at time zone $2, 'IYYY-"W"IW'), null from asked
            union all
            select n, 'model', model, null from asked
            union all
            select k.n, 'route', v.model || ' ' || v.kind || ' revision ' || v.revision, null from asked k
                join route_revisions v on v.id = k.route_id
            union all
            select i.n, coalesce(r.kind, 'carrier') || i.of, c.carrier_code, null
            from inside i join carrier_placements c on c.part_id = i.part and c.occurred_at <= i.ended_at left
                join carriers r on r.code = c.carrier_code
            union all
            select k.n, l.kind || ' ' || x.what || case when q.kind = k.kind then '' else ' of ' || q.kind end, x.level, null
            from asked k
            join containments c on c.container_id = k.part_id and c.item_is_lot and c.present_from <= k.ended_at
                and (c.present_until is null or c.present_until > k.ended_at)
            join lots l on l.id = c.item_id
            join fittings f on f.id = c.fitting_id
            join parts q on q.id = f.part_id
            cross join lateral (values ('lot', l.number), ('supplier', l.supplier)) x (what, level)
            union all
            select w.n, r.characteristic || w.at, null, coalesce(c.value, r.value)
            from works w join readings r on r.attempt_id = w.id left join corrected c on c.reading_id = r.id
            where r.source <> 'Computed' and (r.unit in ('degC', 'hPa') or r.characteristic ilike '%humidity%')
                and r.characteristic is distinct from $3
        )
        select factor, array_agg(n::int), array_agg(level), array_agg(value) from found group by factor order by factor collate "C"
        """;

    /// <summary>Outcomes and factors of the question. Ambient values are cut into bands of about equally many parts.</summary>
    public async Task<FactorsFound> RunAsync(AnalysisFilter filter, FailureAsked asked, CancellationToken cancellation)
    {
        var all = await db.RowsAsync(
            OutcomesSql,
            [filter.From.UtcDateTime, filter.To.UtcDateTime, filter.Model, asked.Stage, asked.Characteristic, asked.Code],
            r => new Outcome(
                r.GetGuid(0),
                r.GetString(1),
                r.GetFieldValue<DateTimeOffset>(2),
                r.GetBoolean(3),
                r.GetBoolean(5) ? null : r.Number(4),
                r.GetBoolean(5),
                r.Text(6)
            ),
            cancellation
        );
        Outcome[] outcomes =
        [
            .. CaseSample
                .Rows([.. all.Select(o => (o.AttemptId, o.Failed))], Most, byOutcome: asked.Characteristic is null)
                .Select(i => all[i]),
        ];
        var found = await db.RowsAsync(
            FactorsSql,
            [outcomes.Select(o => o.AttemptId).ToArray(), filter.Zone, asked.Characteristic],
            r =>
                (
                    Factor: r.GetString(0),
                    Parts: r.GetFieldValue<int[]>(1),
                    Levels: r.GetFieldValue<string?[]>(2),
                    Values: r.GetFieldValue<decimal?[]>(3)
                ),
            cancellation
        );
        FactorColumn[] columns =
        [
            .. found.Select(f =>
                f.Values.Any(v => v is not null)
                    ? FactorColumn.Banded(
                        f.Factor,
                        ByPart(f.Parts, f.Values, outcomes.Length, several => (double?)several.Average()),
                        Bands
                    )
                    : FactorColumn.Of(f.Factor, ByPart(f.Parts, f.Levels, outcomes.Length, Joined))
            ),
        ];
        return new(all, outcomes, columns);
    }

    /// <summary>One level or value for each part, which are counted from 1; null where none is known.</summary>
    private static TOne?[] ByPart<T, TOne>(int[] parts, T?[] found, int rows, Func<IEnumerable<T?>, TOne> one)
    {
        var column = new TOne?[rows];
        foreach (var part in parts.Zip(found).ToLookup(f => f.First, f => f.Second))
        {
            column[part.Key - 1] = one(part);
        }

        return column;
    }

    /// <summary>A part with two lots of one kind has both as its level.</summary>
    private static string? Joined(IEnumerable<string?> levels) =>
        levels.OfType<string>().Distinct().Order(StringComparer.Ordinal).ToList() switch
        {
            [] => null,
            var several => string.Join(" + ", several),
        };
}
