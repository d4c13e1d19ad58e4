using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>
/// One value of a characteristic as it counts now, with the limits that judged it. <c>Load</c> is what it was worked in, <c>Lots</c> the
/// numbers of one kind of lot inside the part, when that was asked for.
/// </summary>
public sealed record ChartPoint(
    string Serial,
    DateTimeOffset At,
    int Attempt,
    double Value,
    bool IsBound,
    decimal? Lower,
    decimal? Upper,
    bool Met,
    string Unit,
    Guid? Load,
    string? Lots,
    string Model
)
{
    internal Guid AttemptId { get; init; }

    internal Guid ReadingId { get; init; }

    /// <summary>The same with what a reading was corrected to.</summary>
    internal ChartPoint As((double Value, bool IsBound, bool Met) corrected) =>
        this with
        {
            Value = corrected.Value,
            IsBound = corrected.IsBound,
            Met = corrected.Met,
        };
}

/// <summary>A failure code with how often it was raised.</summary>
public sealed record CodeCount(string Code, int Count);

/// <summary>What the charts draw.</summary>
public sealed class ChartQuery(WorkshopContext db)
{
    private const string Asked = "v.stage = $4 and v.begun_at >= $1 and v.begun_at < $2 and ($3::text is null or v.model = $3)";

    /// <summary>
    /// Every verdict's value as it was read: $1 from, $2 to, $3 model, $4 stage, $5 characteristic, $6 whether loads are asked for, $7 kind
    /// of lot. Neither corrected nor in order: over ten years that took most of the time.
    /// </summary>
    public const string PointsSql = $"""
        select v.serial, v.begun_at, v.number, r.value::float8, r.digits like '>%', r.lower, r.upper, r.met, r.unit,
            case when $6 then (select a.load_id from attempts a where a.id = v.attempt_id) end,
            case when $7::text is null then null else (
                select string_agg(distinct l.number, ' + ' order by l.number) from containments k join lots l on l.id = k.item_id
                where k.container_id = v.part_id and k.item_is_lot and l.kind = $7 and k.present_from <= v.ended_at
                    and (k.present_until is null or k.present_until > v.ended_at)) end,
            v.model, v.attempt_id, r.id
        from stage_verdicts v
        join readings r on r.attempt_id = v.attempt_id and r.characteristic = $5
        where {Asked}
        """;

    /// <summary>What these readings were corrected to, the latest first: the same $1 to $5.</summary>
    public const string CorrectedSql = $"""
        select c.reading_id, c.value::float8, c.digits like '>%', c.met
        from corrections c
        join readings r on r.id = c.reading_id and r.characteristic = $5
        join stage_verdicts v on v.attempt_id = r.attempt_id
        where {Asked}
        order by c.recorded_at desc, c.id desc
        """;

    /// <summary>
    /// Nonconformities by code and stage: $1 from, $2 to, $3 model, $4 stage. A code that only says that the stage failed is told by its
    /// stage.
    /// </summary>
    public const string CodesSql = """
        select case when n.code in ('stage-failed', 'stage-conditional') then p.kind || '/' || coalesce(n.stage, '-') || case n.code
            when 'stage-conditional' then ' (conditional)' else '' end else n.code end, count(*)::int
        from nonconformities n
        join parts p on p.id = n.part_id
        where n.occurred_at >= $1 and n.occurred_at < $2 and ($3::text is null or p.model = $3) and ($4::text is null or n.stage = $4)
        group by 1 order by 2 desc, 1
        """;

    /// <summary>The values in the order of work.</summary>
    public async Task<IReadOnlyList<ChartPoint>> PointsAsync(
        AnalysisFilter filter,
        string characteristic,
        bool loads,
        string? lotKind,
        CancellationToken cancellation
    )
    {
        object?[] asked = [filter.From.UtcDateTime, filter.To.UtcDateTime, filter.Model, filter.Stage, characteristic];
        var corrected = (
            await db.RowsAsync(
                CorrectedSql,
                asked,
                r => (Reading: r.GetGuid(0), Value: (r.GetDouble(1), r.GetBoolean(2), r.GetBoolean(3))),
                cancellation
            )
        )
            .DistinctBy(c => c.Reading)
            .ToDictionary(c => c.Reading, c => c.Value);
        var points = await db.RowsAsync(
            PointsSql,
            [.. asked, loads, lotKind],
            r => new ChartPoint(
                r.GetString(0),
                r.GetFieldValue<DateTimeOffset>(1),
                r.GetInt32(2),
                r.GetDouble(3),
                r.GetBoolean(4),
                r.Number(5),
                r.Number(6),
                r.GetBoolean(7),
                r.GetString(8),
                r.IsDBNull(9) ? null : r.GetGuid(9),
                r.Text(10),
                r.GetString(11)
            )
            {
                AttemptId = r.GetGuid(12),
                ReadingId = r.GetGuid(13),
            },
            cancellation
        );
        return
        [
            .. points
                .Select(p => corrected.TryGetValue(p.ReadingId, out var now) ? p.As(now) : p)
                .OrderBy(p => p.At)
                .ThenBy(p => p.AttemptId),
        ];
    }

    /// <summary>How often each code was raised.</summary>
    public Task<IReadOnlyList<CodeCount>> CodesAsync(AnalysisFilter filter, CancellationToken cancellation) =>
        db.RowsAsync(
            CodesSql,
            [filter.From.UtcDateTime, filter.To.UtcDateTime, filter.Model, filter.Stage],
            r => new CodeCount(r.GetString(0), r.GetInt32(1)),
            cancellation
        );
}
