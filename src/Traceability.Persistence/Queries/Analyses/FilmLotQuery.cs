using System.Collections.Concurrent;
using System.Collections.ObjectModel;
using System.Text.Json;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Values;
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

/// <summary>
/// The diaphragms of a period by film lot, stratum and way, counted from the rows that <c>Book/FilmFates</c> keeps of them.
/// </summary>
public sealed class FilmLotQuery(WorkshopContext db, NameQuery names)
{
    /// <summary>Paths never change: known by their digest, they may be kept by every process.</summary>
    private static readonly ConcurrentDictionary<Guid, FilmPath> Paths = new();

    private static readonly JsonSerializerOptions Body = new(JsonSerializerDefaults.Web);

    /// <summary>
    /// The films of a period: $1 from, $2 to, $3 model, $4 stratum, $5 time zone, $6 place or stage. Who asks about one place wants the
    /// time of the failure there, which is that of the first such fault of the path; who asks about everything, the time of the first fault
    /// of all.
    /// </summary>
    public const string CountsSql = """
        with asked as materialized (
            select p.id as path_id, min(t.place)::int as fault
            from film_paths p cross join lateral jsonb_array_elements(p.body -> 'faults') with ordinality t (fault, place)
            where $6::text is not null and (t.fault ->> 'place' = $6 or t.fault ->> 'stage' = $6)
            group by p.id
        )
        select f.lot_id, case $4 when 'Builder' then f.fitted_by end, case $4
            when 'Week' then date_trunc('week', f.since at time zone $5) end, f.path_id,
            count(*)::int, max(f.failed_at[coalesce(q.fault, 1)])
        from film_fates f left join asked q on q.path_id = f.path_id
        where f.since >= $1 and f.since < $2 and ($3::text is null or f.model = $3)
        group by 1, 2, 3, 4
        """;

    /// <summary>The lots met ($1), and those received in the period with nothing started: $2 from, $3 to, $4 model.</summary>
    private const string LotsSql =
        "select id, number from lots where id = any($1) or (kind = 'film' and received_at >= $2 and received_at < $3 and $4::text is null)";

    /// <summary>The diaphragms of the period, counted.</summary>
    public async Task<IReadOnlyList<FilmCount>> CountAsync(AnalysisFilter filter, Stratum stratum, CancellationToken cancellation)
    {
        var counted = await db.RowsAsync(
            CountsSql,
            [filter.From.UtcDateTime, filter.To.UtcDateTime, filter.Model, stratum.ToString(), filter.Zone, filter.Stage],
            r => new Counted(
                r.GetGuid(0),
                r.IsDBNull(1) ? null : r.GetGuid(1),
                r.IsDBNull(2) ? null : r.GetDateTime(2),
                r.GetGuid(3),
                r.GetInt32(4),
                r.Moment(5)
            ),
            cancellation
        );
        var lots = await db.RowsAsync(
            LotsSql,
            [counted.Select(c => c.Lot).Distinct().ToArray(), filter.From.UtcDateTime, filter.To.UtcDateTime, filter.Model],
            r => (Id: r.GetGuid(0), Number: r.GetString(1)),
            cancellation
        );
        var badges =
            stratum == Stratum.Builder
                ? await names.PeopleAsync(counted.Select(c => c.By).OfType<Guid>(), cancellation)
                : ReadOnlyDictionary<Guid, Who>.Empty;
        await ReadPathsAsync([.. counted.Select(c => c.Path).Distinct().Where(p => !Paths.ContainsKey(p))], cancellation);
        var numbers = lots.ToDictionary(l => l.Id, l => l.Number);
        return
        [
            .. counted
                .Select(c => new FilmCount(
                    numbers[c.Lot],
                    c.By is { } by ? badges.GetValueOrDefault(by, Who.Nobody).Badge
                        : c.Week is { } week ? IsoWeek.Of(week)
                        : "",
                    Paths[c.Path],
                    c.Parts,
                    c.LastFailure
                ))
                .Concat(
                    numbers.Keys.Except(counted.Select(c => c.Lot)).Select(unused => new FilmCount(numbers[unused], "", Nothing, 0, null))
                )
                .OrderBy(c => c.Lot, StringComparer.Ordinal)
                .ThenBy(c => c.Stratum, StringComparer.Ordinal),
        ];
    }

    private static FilmPath Nothing { get; } = new(false, false, [], [], []);

    private async Task ReadPathsAsync(Guid[] ids, CancellationToken cancellation)
    {
        if (ids.Length == 0)
        {
            return;
        }

        foreach (
            var (id, path) in await db.RowsAsync(
                "select id, body::text from film_paths where id = any($1)",
                [ids],
                r => (r.GetGuid(0), JsonSerializer.Deserialize<FilmPath>(r.GetString(1), Body)!),
                cancellation
            )
        )
        {
            Paths.TryAdd(id, path);
        }
    }

    private sealed record Counted(Guid Lot, Guid? By, DateTime? Week, Guid Path, int Parts, DateTimeOffset? LastFailure);
}
