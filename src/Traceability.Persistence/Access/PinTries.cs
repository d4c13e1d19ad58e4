using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Access;

/// <summary>Where wrong PINs add up: a badge, or the address that they come from; and how many of them close it.</summary>
public sealed record TriedAt(string Place, int Most);

/// <summary>What became of asking for a try.</summary>
public abstract record Reservation
{
    private Reservation() { }

    /// <summary>Taken: it counts as wrong until it is given back.</summary>
    public sealed record Taken(Guid[] Ids) : Reservation;

    /// <summary>As many as there may be are being judged at this moment; some of them may be given back.</summary>
    public sealed record Busy : Reservation;

    /// <summary>That place is closed until then.</summary>
    public sealed record Closed(string Place, DateTimeOffset Until) : Reservation;
}

/// <summary>
/// Counts tries before they are judged, in the database and under a lock of the place, so that neither guesses sent together nor several
/// instances of the service get one more than is allowed. A right PIN gives its try back.
/// </summary>
public sealed class PinTries(WorkshopContext db)
{
    /// <summary>How long a wrong PIN counts.</summary>
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(5);

    /// <summary>Whoever has not judged a try by then has died over it: it counts as wrong.</summary>
    private static readonly TimeSpan JudgedWithin = TimeSpan.FromSeconds(30);

    private const string Lock = "select pg_advisory_xact_lock(hashtextextended(place, 0)) from unnest($1::text[]) place";

    private const string Forget =
        "delete from pin_tries where id in (select id from pin_tries where tried_at <= $1 limit 200 for update skip locked)";

    private const string Take = """
        insert into pin_tries (id, place, tried_at, judged)
        select wanted.id, wanted.place, $4, false from unnest($1::uuid[], $2::text[]) as wanted(id, place)
        where not exists (
            select 1 from unnest($2::text[], $3::int[]) as allowed(place, most)
            where (select count(*) from pin_tries t where t.place = allowed.place and t.tried_at > $5) >= allowed.most)
        returning id
        """;

    private const string Look =
        "select place, tried_at, judged from pin_tries where place = any($1) and tried_at > $2 order by tried_at desc";

    /// <summary>Takes one try at every one of these places, or at none.</summary>
    public async Task<Reservation> ReserveAsync(IReadOnlyCollection<TriedAt> at, DateTimeOffset now, CancellationToken cancellation)
    {
        // In one order everywhere, so that two never wait for each other.
        var ordered = at.OrderBy(t => t.Place, StringComparer.Ordinal).ToList();
        var (ids, places, since) = (
            ordered.ConvertAll(_ => Guid.CreateVersion7()).ToArray(),
            ordered.ConvertAll(t => t.Place).ToArray(),
            now - Window
        );
        NpgsqlBatchCommand[] statements =
        [
            new(Lock) { Parameters = { new() { Value = places } } },
            new(Forget) { Parameters = { new() { Value = since } } },
            new(Take)
            {
                Parameters =
                {
                    new() { Value = ids },
                    new() { Value = places },
                    new() { Value = ordered.ConvertAll(t => t.Most).ToArray() },
                    new() { Value = now },
                    new() { Value = since },
                },
            },
            new(Look)
            {
                Parameters =
                {
                    new() { Value = places },
                    new() { Value = since },
                },
            },
        ];
        return await OneRoundTrip.RunAsync(
            db,
            statements,
            async reader =>
            {
                await reader.NextResultAsync(cancellation);
                var taken = await reader.ReadAsync(cancellation);
                await reader.NextResultAsync(cancellation);
                return taken ? new Reservation.Taken(ids) : Why(ordered, await TriesAsync(reader, cancellation), now);
            },
            cancellation
        );
    }

    /// <summary>The PIN was right: what was taken is given back.</summary>
    public Task GiveBackAsync(Guid[] ids, CancellationToken cancellation) =>
        db.Set<PinTry>().Where(t => ids.Contains(t.Id)).ExecuteDeleteAsync(cancellation);

    /// <summary>The PIN was wrong.</summary>
    public Task KeepAsync(Guid[] ids, CancellationToken cancellation) =>
        db.Set<PinTry>().Where(t => ids.Contains(t.Id)).ExecuteUpdateAsync(t => t.SetProperty(x => x.Judged, true), cancellation);

    private static async Task<ILookup<string, (DateTimeOffset At, bool Judged)>> TriesAsync(
        NpgsqlDataReader reader,
        CancellationToken cancellation
    )
    {
        var tries = new List<(string Place, DateTimeOffset At, bool Judged)>();
        while (await reader.ReadAsync(cancellation))
        {
            tries.Add((reader.GetString(0), reader.GetFieldValue<DateTimeOffset>(1), reader.GetBoolean(2)));
        }

        return tries.ToLookup(t => t.Place, t => (t.At, t.Judged));
    }

    /// <summary>Closed where enough are known to be wrong; else it is those being judged that fill the place.</summary>
    private static Reservation Why(IReadOnlyList<TriedAt> at, ILookup<string, (DateTimeOffset At, bool Judged)> tries, DateTimeOffset now)
    {
        foreach (var (place, most) in at)
        {
            var wrong = tries[place].Where(t => t.Judged || t.At <= now - JudgedWithin).Select(t => t.At).ToList();
            if (wrong.Count >= most)
            {
                return new Reservation.Closed(place, wrong[most - 1] + Window);
            }
        }

        return new Reservation.Busy();
    }
}
