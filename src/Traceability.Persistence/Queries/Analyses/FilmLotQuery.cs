using System.Collections.Concurrent;
using System.Text.Json;
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

/// <summary>The diaphragms of a period by film lot, stratum and way, counted from the rows that <c>Book/FilmFates</c> keeps of them.</summary>
public sealed class FilmLotQuery(WorkshopContext db)
{
    /// <summary>Paths never change: known by their digest, they may be kept by every process.</summary>
    private static readonly ConcurrentDictionary<Guid, FilmPath> Paths = new();

    private static readonly JsonSerializerOptions Body = new(JsonSerializerDefaults.Web);

    /// <summary>$1 from, $2 to, $3 model.</summary>
    private const string Asked = "f.since >= $1 and f.since < $2 and ($3::text is null or f.model = $3)";

    /// <summary>$4 stratum, $5 time zone. The lots received in the period are there with nothing started.</summary>
    public const string CountsSql = $"""
        with counted as (
            select f.lot_id, case $4 when 'Builder' then f.fitted_by end as by, case $4 when 'Week' then date_trunc('week', f.since at time zone $5) end as week, f.path_id, count(*)::int as parts
            from film_fates f where {Asked}
            group by 1, 2, 3, 4
        )
        select l.number, case $4 when 'Week' then to_char(c.week, 'IYYY-"W"IW') when 'Builder' then coalesce(b.badge, '-') else '' end, c.path_id, c.parts
        from counted c join lots l on l.id = c.lot_id left join people b on b.id = c.by
        union all
        select number, '', null, 0 from lots where kind = 'film' and received_at >= $1 and received_at < $2 and $3::text is null
        order by 1, 2, 3
        """;

    /// <summary>When the latest film of a lot failed first at each fault of its path.</summary>
    public const string FailuresSql = $"""
        select l.number, f.path_id, t.place::int, max(t.at)
        from film_fates f
        join lots l on l.id = f.lot_id
        cross join lateral unnest(f.failed_at) with ordinality t (at, place)
        where f.failed_at is not null and {Asked}
        group by 1, 2, 3 order by 1, 2, 3
        """;

    /// <summary>What the lots got into; a capsule with two films of one lot counts once.</summary>
    public const string ReachSql = $"""
        select l.number, r.container_kind, count(*)::int, (count(*) filter (where r.shipped))::int, (count(*) filter (where r.returned))::int
        from (
            select f.lot_id, f.container_kind, f.container_id, bool_or(f.shipped) as shipped, bool_or(f.returned) as returned
            from film_reaches f where {Asked}
            group by 1, 2, 3
        ) r
        join lots l on l.id = r.lot_id
        group by 1, 2
        """;

    /// <summary>The diaphragms of the period, counted.</summary>
    public async Task<IReadOnlyList<FilmCount>> CountAsync(AnalysisFilter filter, Stratum stratum, CancellationToken cancellation)
    {
        var counted = await db.RowsAsync(
            CountsSql, [.. Values(filter), stratum.ToString(), filter.Zone],
            r => (Lot: r.GetString(0), Stratum: r.GetString(1), Path: r.IsDBNull(2) ? Guid.Empty : r.GetGuid(2), Parts: r.GetInt32(3)), cancellation);
        var failures = (await db.RowsAsync(
            FailuresSql, Values(filter), r => (Lot: r.GetString(0), Path: r.GetGuid(1), At: r.GetFieldValue<DateTimeOffset>(3)), cancellation))
            .ToLookup(f => (f.Lot, f.Path), f => f.At);
        await ReadPathsAsync([.. counted.Select(c => c.Path).Where(p => p != Guid.Empty && !Paths.ContainsKey(p)).Distinct()], cancellation);
        return [.. counted.Select(c => new FilmCount(c.Lot, c.Stratum, c.Path == Guid.Empty ? Nothing : Paths[c.Path], c.Parts, [.. failures[(c.Lot, c.Path)]]))];
    }

    /// <summary>What the lots got into.</summary>
    public Task<IReadOnlyList<LotReach>> ReachAsync(AnalysisFilter filter, CancellationToken cancellation) => db.RowsAsync(
        ReachSql, Values(filter), r => new LotReach(r.GetString(0), r.GetString(1), r.GetInt32(2), r.GetInt32(3), r.GetInt32(4)), cancellation);

    private static FilmPath Nothing { get; } = new(false, false, [], []);

    private async Task ReadPathsAsync(Guid[] ids, CancellationToken cancellation)
    {
        if (ids.Length == 0)
        {
            return;
        }

        foreach (var (id, path) in await db.RowsAsync(
            "select id, body::text from film_paths where id = any($1)", [ids], r => (r.GetGuid(0), JsonSerializer.Deserialize<FilmPath>(r.GetString(1), Body)!), cancellation))
        {
            Paths.TryAdd(id, path);
        }
    }

    private static object?[] Values(AnalysisFilter f) => [f.From.UtcDateTime, f.To.UtcDateTime, f.Model];
}
