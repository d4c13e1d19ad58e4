using Traceability.Persistence.Access;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Access;

/// <summary>Why nothing was tried.</summary>
public enum Closed
{
    /// <summary>Too many wrong PINs for the badge.</summary>
    Badge,

    /// <summary>Too many wrong PINs from the address.</summary>
    Address,

    /// <summary>Too many who want to sign in at this moment.</summary>
    Busy,
}

/// <summary>Nothing was tried: why, and when it is worth coming again.</summary>
public sealed record Stopped(Closed Because, DateTimeOffset Until, TimeSpan Wait);

/// <summary>
/// What a try came to: what the PIN or code has proven, or why nothing was tried; neither when they do not belong together.
/// </summary>
public sealed record Tried<T>(T? Proven, Stopped? Stopped)
    where T : class;

/// <summary>
/// The one way in which a PIN or a one-time code is proved, wherever it is typed. A place for the slow hash comes first, then the try is
/// counted at the badge and at the address, and only then it is judged. Whoever is signed in and proves their own PIN is not stopped by
/// what others do at their address.
/// </summary>
public sealed class PinProof(WorkshopContext db, PinTries tries, SlowHashes hashes, IHttpContextAccessor accessor, TimeProvider clock)
{
    private const int MostAtBadge = 5,
        MostAtAddress = 60;
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(10),
        LookAgain = TimeSpan.FromMilliseconds(20);

    /// <summary>The badge as it is kept.</summary>
    public static string BadgeOf(string typed) => typed.Trim().ToUpperInvariant();

    /// <summary>Proves a person by badge and PIN.</summary>
    public Task<Tried<PinStanding>> ProveAsync(string badgeAsTyped, string pin, CancellationToken cancellation) =>
        TryAsync(badgeAsTyped, standing => PinHash.Fits(standing?.Pin?.Hash, pin) ? standing : null, cancellation);

    /// <summary>Counts one try and has it judged; null from <paramref name="judge"/> means that it was wrong.</summary>
    public async Task<Tried<T>> TryAsync<T>(string badgeAsTyped, Func<PinStanding?, T?> judge, CancellationToken cancellation)
        where T : class
    {
        using var place = await hashes.EnterAsync(cancellation);
        if (place is null)
        {
            return new(null, Busy());
        }

        var badge = BadgeOf(badgeAsTyped);
        var reservation = await ReserveAsync(badge, cancellation);
        if (reservation is not Reservation.Taken { Ids: var ids })
        {
            return new(null, reservation is Reservation.Closed closed ? Shut(closed, badge) : Busy());
        }

        T? proven = null;
        try
        {
            proven = judge(await PinStanding.OfAsync(db, badge, cancellation));
        }
        finally
        {
            // Also when the one who asked has gone meanwhile: a guess is a guess.
            await (proven is null ? tries.KeepAsync(ids, CancellationToken.None) : tries.GiveBackAsync(ids, CancellationToken.None));
        }

        return new(proven, null);
    }

    /// <summary>While the last tries of a place are being judged, they may yet turn out right.</summary>
    private async Task<Reservation> ReserveAsync(string badge, CancellationToken cancellation)
    {
        var at = PlacesOf(badge);
        var since = TimeProvider.System.GetTimestamp();
        while (true)
        {
            var reservation = await tries.ReserveAsync(at, clock.GetUtcNow(), cancellation);
            if (reservation is not Reservation.Busy || TimeProvider.System.GetElapsedTime(since) > LongestWait)
            {
                return reservation;
            }

            await Task.Delay(LookAgain, cancellation);
        }
    }

    private List<TriedAt> PlacesOf(string badge)
    {
        var context = accessor.HttpContext;
        List<TriedAt> places = [new(PlaceOf(badge), MostAtBadge)];
        if (context?.Connection.RemoteIpAddress is { } address)
        {
            var own = SessionAuthentication.ActorOf(context)?.Badge == badge;
            places.Add(new("address " + AnonymousLimits.PlaceOf(address), own ? int.MaxValue : MostAtAddress));
        }

        return places;
    }

    /// <summary>Hashed, because some type their PIN where the badge belongs.</summary>
    private static string PlaceOf(string badge) => "badge " + SessionAuthentication.HashOf(badge);

    private Stopped Shut(Reservation.Closed closed, string badge)
    {
        var wait = closed.Until - clock.GetUtcNow();
        return new(
            closed.Place == PlaceOf(badge) ? Closed.Badge : Closed.Address,
            closed.Until,
            wait < TimeSpan.FromSeconds(1) ? TimeSpan.FromSeconds(1) : wait
        );
    }

    private Stopped Busy() => new(Closed.Busy, clock.GetUtcNow() + LongestWait, LongestWait);
}
