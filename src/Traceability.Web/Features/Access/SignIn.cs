using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Access;

/// <summary>Opens a session for badge and PIN.</summary>
public sealed class SignIn(WorkshopContext db, PinProof proof, TimeProvider clock) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/sessions", HandleAsync)
            .AllowAnonymous()
            .KeepsNothing()
            .Is(Subjects.Access, "signIn", "Sign in with badge and PIN; gives a bearer token.");

    /// <summary>Who signs in.</summary>
    /// <param name="Badge" example="BUILD1">The person's badge.</param>
    /// <param name="Pin" example="4071">The person's PIN.</param>
    public sealed record Input(string Badge, string Pin);

    /// <summary>The person who signed in.</summary>
    /// <param name="Badge" example="BUILD1">The person's badge.</param>
    /// <param name="Name" example="Ilsa Branoch">The person's name.</param>
    /// <param name="Roles">The person's roles.</param>
    public sealed record PersonAnswer(string Badge, string Name, IReadOnlyList<Role> Roles);

    /// <summary>A session.</summary>
    /// <param name="Token" example="9f2c41d07be85a6390c1f4e2d8b7a05516c3e9f0a4b2d7816e5c90f3a1b8d264">The bearer token.</param>
    /// <param name="Person">Who signed in.</param>
    /// <param name="ExpiresAt" example="2026-11-25T20:05:00Z">When the session ends by itself.</param>
    public sealed record Output(string Token, PersonAnswer Person, DateTimeOffset ExpiresAt);

    /// <summary>What a sign-in came to; none of them when badge and PIN do not belong together.</summary>
    /// <param name="Session">The session that was opened.</param>
    /// <param name="Throttled">Why the PIN was not compared.</param>
    /// <param name="Deactivated">Why the person signs in no more, for whoever has the right PIN only.</param>
    public sealed record Outcome(Output? Session, Throttled? Throttled, string? Deactivated = null);

    public static async Task<Results<Ok<Output>, Problem>> HandleAsync(Input input, SignIn use, HttpContext http) =>
        await use.RunAsync(input, http.RequestAborted) switch
        {
            { Session: { } session } => TypedResults.Ok(session),
            { Throttled: { } throttled } => ProblemAnswers.From(throttled.ToRefusal(PinProof.BadgeOf(input.Badge))),
            { Deactivated: { } because } => ProblemAnswers.Of(ProblemKinds.WrongBadgeOrPin, AccessSentences.AccessWasEnded(because)),
            _ => ProblemAnswers.Of(ProblemKinds.WrongBadgeOrPin, AccessSentences.BadgeAndPinDoNotBelongTogether),
        };

    public async Task<Outcome> RunAsync(Input input, CancellationToken cancellation)
    {
        var tried = await proof.ProveAsync(input.Badge, input.Pin, cancellation);
        return tried.Proven is { } proven ? await StartAsync(proven, cancellation) : new(null, tried.Throttled);
    }

    /// <summary>
    /// Starts the session, unless the credential is no longer the present one: a PIN that is changed, or a code given out, at this very
    /// moment, or a deactivation, ends the sessions that exist, and this one must not be added after them.
    /// </summary>
    private async Task<Outcome> StartAsync(PinCredential proven, CancellationToken cancellation)
    {
        var id = proven.Person.Id;
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await db.Database.ExecuteSqlAsync($"select 1 from ledger_heads where subject_id = {id} for share", cancellation);
        if ((await PinCredential.OfAsync(db, proven.Person.Badge, cancellation))?.ProvenBy != proven.ProvenBy)
        {
            return new(null, null);
        }

        if (await db.DecisionAsync(id, cancellation) is { State: not SetupState.InUse } ended)
        {
            return new(null, null, ended.Reason);
        }

        var actor = (await ActorQuery.FindAsync(db, id, cancellation))!;
        var session = await AddAsync(actor, cancellation);
        await transaction.CommitAsync(cancellation);
        return new(session, null);
    }

    private async Task<Output> AddAsync(Actor actor, CancellationToken cancellation)
    {
        var now = clock.GetUtcNow();
        var token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
        var session = new SignInSession
        {
            TokenHash = SessionAuthentication.HashOf(token),
            PersonId = actor.PersonId,
            StartedAt = now,
            ExpiresAt = now + SessionAuthentication.Lifetime,
        };
        db.Add(session);
        await db.SaveChangesAsync(cancellation);
        return new(
            token,
            new(actor.Badge, actor.Name, [.. actor.Roles.OrderBy(r => r.ToString(), StringComparer.Ordinal)]),
            session.ExpiresAt
        );
    }
}
