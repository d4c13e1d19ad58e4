using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>First verdicts of one group at one stage: how many, how many of them a pass.</summary>
public sealed record YieldCount(string Group, string Kind, string Stage, int Judged, int PassedFirst);

/// <summary>Counts first verdicts: rework does not heal a yield, a correction that turned the verdict does.</summary>
public sealed class YieldQuery(WorkshopContext db)
{
    /// <summary>What yields may be asked by: what that is of a verdict; and what it takes beside the verdict.</summary>
    private static readonly Dictionary<string, (string Of, string Beside)> ByVerdict = new()
    {
        ["stage"] = ("v.kind || '/' || v.stage", ""),
        ["model"] = ("v.model", ""),
        ["kind"] = ("v.kind", ""),
        ["film-lot"] = (
            "film.number",
            """
            join lateral (
                select distinct l.number from containments c join lots l on l.id = c.item_id
                where c.container_id = v.part_id and c.item_is_lot and l.kind = 'film' and c.present_from <= v.ended_at
                    and (c.present_until is null or c.present_until > v.ended_at)
            ) film on true
            """
        ),
        ["builder"] = ("b.badge", "join attempts a on a.id = v.attempt_id join people b on b.id = a.by"),
        ["station"] = ("a.station", "join attempts a on a.id = v.attempt_id"),
        ["route"] = (
            "r.model || '/' || r.kind || ' revision ' || r.revision",
            "join parts p on p.id = v.part_id join route_revisions r on r.id = p.route_id"
        ),
    };

    /// <summary>The others are days put together, in the time zone ($5).</summary>
    private static readonly Dictionary<string, string> ByDay = new()
    {
        ["week"] = "IYYY-\"W\"IW",
        ["month"] = "YYYY-MM",
        ["weekday"] = "ID FMDay",
    };

    /// <summary>Every group.</summary>
    public static IReadOnlyList<string> Groups { get; } = [.. ByVerdict.Keys, .. ByDay.Keys];

    /// <summary>
    /// The statement for one way of grouping: $1 from, $2 to, $3 model, $4 stage, $5 time zone (for days). A part of two film lots counts
    /// for both.
    /// </summary>
    public static string SqlBy(string by) =>
        ByDay.TryGetValue(by, out var format)
            ? $"""
                select to_char(day, '{format}'), kind, stage, sum(judged)::int, sum(passed)::int
                from ({SqlBy("date_trunc('day', v.begun_at at time zone $5)", "")}) x (day, kind, stage, judged, passed)
                group by 1, 2, 3 order by 1, 2, 3
                """
            : $"{SqlBy(ByVerdict[by].Of, ByVerdict[by].Beside)} order by 1, 2, 3";

    /// <summary>The counts by one of the groups.</summary>
    public Task<IReadOnlyList<YieldCount>> RunAsync(AnalysisFilter filter, string by, CancellationToken cancellation) =>
        db.RowsAsync(
            SqlBy(by),
            ByDay.ContainsKey(by) ? [.. Values(filter), filter.Zone] : Values(filter),
            r => new YieldCount(r.GetString(0), r.GetString(1), r.GetString(2), r.GetInt32(3), r.GetInt32(4)),
            cancellation
        );

    private static string SqlBy(string group, string beside) =>
        $"""
            select {group}, v.kind, v.stage, count(*)::int, (count(*) filter (where v.passed))::int
            from stage_verdicts v {beside}
            where v.begun_at >= $1 and v.begun_at < $2 and ($3::text is null or v.model = $3) and ($4::text is null or v.stage = $4)
                and v.kind <> 'film-lot' and v.first
            group by 1, 2, 3
            """;

    private static object?[] Values(AnalysisFilter f) => [f.From.UtcDateTime, f.To.UtcDateTime, f.Model, f.Stage];
}
