using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>
/// One value of a characteristic as it counts now, with the limits that judged it. <c>Week</c> and <c>Load</c> name the subgroups it may belong to;
/// <c>Lots</c> are the numbers of one kind of lot inside the part, when that was asked for.
/// </summary>
public sealed record ChartPoint(
    string Serial, DateTimeOffset At, int Attempt, double Value, bool IsBound, decimal? Lower, decimal? Upper, bool Met, string Unit, string Week, Guid? Load, string? Lots, string Model);

/// <summary>A failure code with how often it was raised.</summary>
public sealed record CodeCount(string Code, int Count);

/// <summary>What the charts draw.</summary>
public sealed class ChartQuery(WorkshopContext db)
{
    /// <summary>Every verdict's value in the order of work: $1 from, $2 to, $3 model, $4 stage, $5 characteristic, $6 time zone, $7 kind of lot.</summary>
    public const string PointsSql = """
        select v.serial, v.begun_at, v.number, coalesce(c.value, r.value)::float8, coalesce(c.digits, r.digits) like '>%', r.lower, r.upper, coalesce(c.met, r.met), r.unit,
            to_char(v.begun_at at time zone $6, 'IYYY-"W"IW'), (select a.load_id from attempts a where a.id = v.attempt_id),
            case when $7::text is null then null else (
                select string_agg(distinct l.number, ' + ' order by l.number) from containments k join lots l on l.id = k.item_id
                where k.container_id = v.part_id and k.item_is_lot and l.kind = $7 and k.present_from <= v.ended_at and (k.present_until is null or k.present_until > v.ended_at)) end,
            v.model
        from stage_verdicts v
        join readings r on r.attempt_id = v.attempt_id and r.characteristic = $5
        left join lateral (select value, digits, met from corrections c where c.reading_id = r.id order by c.recorded_at desc, c.id desc limit 1) c on true
        where v.stage = $4 and v.begun_at >= $1 and v.begun_at < $2 and ($3::text is null or v.model = $3)
        order by v.begun_at, v.attempt_id
        """;

    /// <summary>Nonconformities by code and stage: $1 from, $2 to, $3 model, $4 stage. A code that only says that the stage failed is told by its stage.</summary>
    public const string CodesSql = """
        select case when n.code in ('stage-failed', 'stage-conditional') then p.kind || '/' || coalesce(n.stage, '-') || case n.code when 'stage-conditional' then ' (conditional)' else '' end else n.code end, count(*)::int
        from nonconformities n
        join parts p on p.id = n.part_id
        where n.occurred_at >= $1 and n.occurred_at < $2 and ($3::text is null or p.model = $3) and ($4::text is null or n.stage = $4)
        group by 1 order by 2 desc, 1
        """;

    /// <summary>The values in the order of work.</summary>
    public Task<IReadOnlyList<ChartPoint>> PointsAsync(AnalysisFilter filter, string characteristic, string? lotKind, CancellationToken cancellation) => db.RowsAsync(
        PointsSql, [filter.From.UtcDateTime, filter.To.UtcDateTime, filter.Model, filter.Stage, characteristic, filter.Zone, lotKind],
        r => new ChartPoint(
            r.GetString(0), r.GetFieldValue<DateTimeOffset>(1), r.GetInt32(2), r.GetDouble(3), r.GetBoolean(4), r.Number(5), r.Number(6), r.GetBoolean(7), r.GetString(8),
            r.GetString(9), r.IsDBNull(10) ? null : r.GetGuid(10), r.Text(11), r.GetString(12)), cancellation);

    /// <summary>How often each code was raised.</summary>
    public Task<IReadOnlyList<CodeCount>> CodesAsync(AnalysisFilter filter, CancellationToken cancellation) => db.RowsAsync(
        CodesSql, [filter.From.UtcDateTime, filter.To.UtcDateTime, filter.Model, filter.Stage], r => new CodeCount(r.GetString(0), r.GetInt32(1)), cancellation);
}
