using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>First verdicts of one group at one stage: how many, how many of them a pass.</summary>
public sealed record YieldCount(string Group, string Kind, string Stage, int Judged, int PassedFirst);

/// <summary>Counts first verdicts: rework does not heal a yield, a correction that turned the verdict does.</summary>
public sealed class YieldQuery(WorkshopContext db)
{
    /// <summary>What yields may be asked by, and what that is in the statement.</summary>
    public static readonly IReadOnlyDictionary<string, string> Groups = new Dictionary<string, string>
    {
        ["stage"] = "p.kind || '/' || a.stage",
        ["model"] = "p.model",
        ["kind"] = "p.kind",
        ["film-lot"] = "film.number",
        ["builder"] = "b.badge",
        ["station"] = "a.station",
        ["route"] = "v.model || '/' || v.kind || ' revision ' || v.revision",
        ["week"] = "to_char(a.occurred_at at time zone $5, 'IYYY-\"W\"IW')",
        ["month"] = "to_char(a.occurred_at at time zone $5, 'YYYY-MM')",
        ["weekday"] = "to_char(a.occurred_at at time zone $5, 'ID FMDay')",
    };

    /// <summary>The statement for one way of grouping: $1 from, $2 to, $3 model, $4 stage, $5 time zone (where the group needs it). A part of two film lots counts for both.</summary>
    public static string SqlBy(string by) => $"""
        select {Groups[by]}, p.kind, a.stage, count(*)::int, (count(*) filter (where {VerdictSql.Passed}))::int
        from attempts a
        join attempt_endings e on e.attempt_id = a.id
        join parts p on p.id = a.part_id
        {(by == "builder" ? "join people b on b.id = a.by" : "")}
        {(by == "route" ? "join route_revisions v on v.id = p.route_id" : "")}
        {(by == "film-lot" ? """
            join lateral (
                select distinct l.number from containments c join lots l on l.id = c.item_id
                where c.container_id = a.part_id and c.item_is_lot and l.kind = 'film' and c.present_from <= e.occurred_at and (c.present_until is null or c.present_until > e.occurred_at)
            ) film on true
            """ : "")}
        where a.occurred_at >= $1 and a.occurred_at < $2 and e.verdict is not null and ($3::text is null or p.model = $3) and ($4::text is null or a.stage = $4)
            and p.kind <> 'film-lot' and {VerdictSql.First}
        group by 1, 2, 3 order by 1, 2, 3
        """;

    /// <summary>The counts by one of <see cref="Groups"/>.</summary>
    public Task<IReadOnlyList<YieldCount>> RunAsync(AnalysisFilter filter, string by, CancellationToken cancellation) => db.RowsAsync(
        SqlBy(by), Groups[by].Contains("$5", StringComparison.Ordinal) ? [.. Values(filter), filter.Zone] : Values(filter),
        r => new YieldCount(r.GetString(0), r.GetString(1), r.GetString(2), r.GetInt32(3), r.GetInt32(4)), cancellation);

    private static object?[] Values(AnalysisFilter f) => [f.From.UtcDateTime, f.To.UtcDateTime, f.Model, f.Stage];
}
