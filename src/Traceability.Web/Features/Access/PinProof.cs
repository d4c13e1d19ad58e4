using Traceability.Persistence.Access;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Access;

/// <summary>Why a PIN or code was not even compared.</summary>
public enum ThrottleReason
{
    /// <summary>Too many wrong PINs for the badge.</summary>
    Badge,

    /// <summary>Too many wrong PINs from the address.</summary>
    Address,

    /// <summary>Too many who want to sign in at this moment.</summary>
    Busy,
}

/// <summary>The PIN or code was not compared: why, and when it is worth trying again.</summary>
public sealed record Throttled(ThrottleReason Because, DateTimeOffset Until, TimeSpan Wait);

/// <summary>
/// What a try came to: what the PIN or code has proven, or why it was not compared; neither when it is wrong.
/// </summary>
public sealed record ProofResult<T>(T? Proven, Throttled? Throttled)
    where T : class;

/// <summary>
/// The one way in which a PIN or a one-time code is proved, wherever it is typed. A permit for the slow hash comes first, then the try is
/// counted at the badge and at the address, and only then it is judged. Whoever is signed in and proves their own PIN is not throttled by
/// what others do at their address.
/// </summary>
public sealed class PinProof(WorkshopContext db, PinTries tries, PinHashLimiter hashes, IHttpContextAccessor accessor, TimeProvider clock)
{
    private const int MostAtBadge = 5,
        MostAtAddress = 60;
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(10),
        LookAgain = TimeSpan.FromMilliseconds(20);

    /// <summary>The badge as it is kept.</summary>
    public static string BadgeOf(string typed) => typed.Trim().ToUpperInvariant();

    /// <summary>Proves a person by badge and PIN.</summary>
    public Task<ProofResult<PinCredential>> ProveAsync(string badgeAsTyped, string pin, CancellationToken cancellation) =>
        TryAsync(badgeAsTyped, credential => PinHash.Fits(credential?.Pin?.Hash, pin) ? credential : null, cancellation);

    /// <summary>Counts one try and has it compared; null from <paramref name="judge"/> means that it was wrong.</summary>
    public async Task<ProofResult<T>> TryAsync<T>(string badgeAsTyped, Func<PinCredential?, T?> judge, CancellationToken cancellation)
        where T : class
    {
        using var permit = await hashes.AcquireAsync(cancellation);
        if (permit is null)
        {
            return new(null, Busy());
        }

        var badge = BadgeOf(badgeAsTyped);
        var reservation = await ReserveAsync(badge, cancellation);
        if (reservation is not Reservation.Taken { Ids: var ids })
        {
            return new(null, reservation is Reservation.Closed closed ? LockedAt(closed, badge) : Busy());
        }

        T? proven = null;
        try
        {
            proven = judge(await PinCredential.OfAsync(db, badge, cancellation));
        }
        finally
        {
            // Also when the one who asked has gone meanwhile: a guess is a guess.
            await (proven is null ? tries.KeepAsync(ids, CancellationToken.None) : tries.GiveBackAsync(ids, CancellationToken.None));
        }

        return new(proven, null);
    }

    /// <summary>Waits while the last tries at the place are still being compared, because they may yet turn out right.</summary>
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

    private Throttled LockedAt(Reservation.Closed closed, string badge)
    {
        var wait = closed.Until - clock.GetUtcNow();
        return new(
            closed.Place == PlaceOf(badge) ? ThrottleReason.Badge : ThrottleReason.Address,
            closed.Until,
            wait < TimeSpan.FromSeconds(1) ? TimeSpan.FromSeconds(1) : wait
        );
    }

    private Throttled Busy() => new(ThrottleReason.Busy, clock.GetUtcNow() + LongestWait, LongestWait);
}
