using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.SignIn;

/// <summary>
/// Badge and PIN against a session. PINs are short, so the hash is slow and a badge is locked for a while after repeated failures,
/// which are kept in the database for all instances to see.
/// </summary>
public sealed class SignIn(WorkshopContext db, TimeProvider clock)
{
    private const int FailuresAllowed = 5;
    private static readonly TimeSpan LockedFor = TimeSpan.FromMinutes(5);
    private static readonly PasswordHasher<Person> Hasher = new();

    /// <summary>The hash that is compared when the badge is unknown, so that the answer takes as long as for a known one.</summary>
    private static readonly string NobodysHash = HashPin("0000");

    public sealed record Input(string Badge, string Pin);

    public sealed record PersonAnswer(string Badge, string Name, IReadOnlyList<string> Roles);

    public sealed record Output(string Token, PersonAnswer Person, DateTimeOffset ExpiresAt);

    /// <summary>What a sign-in came to.</summary>
    public sealed record Outcome(Output? Session, DateTimeOffset? LockedUntil);

    public static async Task<IResult> HandleAsync(Input input, SignIn use, HttpContext http)
    {
        var outcome = await use.RunAsync(input, http.RequestAborted);
        if (outcome.LockedUntil is { } until)
        {
            http.Response.Headers.RetryAfter = ((int)LockedFor.TotalSeconds).ToString(System.Globalization.CultureInfo.InvariantCulture);
            return ProblemAnswers.Of(ProblemKinds.TooManyAttempts, StationSentences.TooManyFailedSignInsUntil(until));
        }

        return outcome.Session is { } session
            ? Results.Ok(session)
            : ProblemAnswers.Of(ProblemKinds.WrongBadgeOrPin, StationSentences.BadgeAndPinDoNotBelongTogether);
    }

    /// <summary>The slow hash of a PIN.</summary>
    public static string HashPin(string pin) => Hasher.HashPassword(null!, pin);

    public async Task<Outcome> RunAsync(Input input, CancellationToken cancellation)
    {
        var proof = await ProveAsync(input.Badge, input.Pin, cancellation);
        return proof.Person is null ? new(null, proof.LockedUntil)
            : new(await StartAsync((await ActorQuery.FindAsync(db, proof.Person.Id, cancellation))!, clock.GetUtcNow(), cancellation), null);
    }

    /// <summary>What became of a badge with a PIN: whose it is, or until when the badge is locked; neither when they do not belong together.</summary>
    public sealed record Proof(Person? Person, DateTimeOffset? LockedUntil);

    /// <summary>Proves a person by badge and PIN, at sign-in and again before a decision. A wrong PIN counts towards the lock wherever it is typed.</summary>
    public async Task<Proof> ProveAsync(string badgeAsTyped, string pin, CancellationToken cancellation)
    {
        var badge = badgeAsTyped.Trim().ToUpperInvariant();
        var now = clock.GetUtcNow();
        var since = now - LockedFor;
        var failures = await db.Set<SignInFailure>().Where(f => f.Badge == badge && f.FailedAt > since).Select(f => f.FailedAt).ToListAsync(cancellation);
        if (failures.Count >= FailuresAllowed)
        {
            return new(null, failures.Max() + LockedFor);
        }

        var person = await db.Set<Person>().AsNoTracking().FirstOrDefaultAsync(p => p.Badge == badge, cancellation);
        if (await PinFitsAsync(person, pin, cancellation))
        {
            return new(person, null);
        }

        db.Add(new SignInFailure(Guid.CreateVersion7(), badge.Length > 40 ? badge[..40] : badge, now));
        await db.SaveChangesAsync(cancellation);
        return new(null, null);
    }

    /// <summary>Whether this is the person's PIN.</summary>
    public async Task<bool> PinFitsAsync(Person? person, string pin, CancellationToken cancellation)
    {
        var hash = person is null ? null : await db.Set<PinSetting>().AsNoTracking().Where(p => p.PersonId == person.Id).OrderByDescending(p => p.RecordedAt).Select(p => p.Hash).FirstOrDefaultAsync(cancellation);
        return Hasher.VerifyHashedPassword(null!, hash ?? NobodysHash, pin) != PasswordVerificationResult.Failed && hash is not null;
    }

    private async Task<Output> StartAsync(Actor actor, DateTimeOffset now, CancellationToken cancellation)
    {
        var token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
        var session = new SignInSession { TokenHash = SessionAuthentication.HashOf(token), PersonId = actor.PersonId, StartedAt = now, ExpiresAt = now + SessionAuthentication.Lifetime };
        db.Add(session);
        await db.SaveChangesAsync(cancellation);
        return new(token, new(actor.Badge, actor.Name, [.. actor.Roles.Select(r => r.ToString().ToLowerInvariant()).Order()]), session.ExpiresAt);
    }
}
