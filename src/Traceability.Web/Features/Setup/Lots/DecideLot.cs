using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>Releases a lot, or puts it (back) into quarantine, with the reason.</summary>
public sealed class DecideLot(WorkshopContext db, Writes writes, LotQuery lots, FilmLotRoute filmRoute) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/lots/{number}/release", ReleaseAsync).For(Role.Quality).Is(Subjects.Lots, "releaseLot", "Release a lot.");
        api.MapPost("/lots/{number}/quarantine", QuarantineAsync)
            .For(Role.Quality)
            .Is(Subjects.Lots, "quarantineLot", "Put a lot into quarantine.");
    }

    public sealed record Input(string Reason, DateTimeOffset? OccurredAt = null);

    public static Task<Results<Changed<LotAnswer>, Problem>> ReleaseAsync(
        string number,
        Input input,
        SignedIn signedIn,
        DecideLot use,
        Writes writes
    ) => writes.ChangeAsync(cancellation => use.RunAsync(number, LotState.Released, input, signedIn.Actor, cancellation));

    public static Task<Results<Changed<LotAnswer>, Problem>> QuarantineAsync(
        string number,
        Input input,
        SignedIn signedIn,
        DecideLot use,
        Writes writes
    ) => writes.ChangeAsync(cancellation => use.RunAsync(number, LotState.Quarantined, input, signedIn.Actor, cancellation));

    public async Task<Answer<LotAnswer>> RunAsync(string number, LotState state, Input input, Actor actor, CancellationToken cancellation)
    {
        if (Timing.Problem(input.OccurredAt, writes.Now, actor) is { } wrongTime)
        {
            return wrongTime;
        }

        if (string.IsNullOrWhiteSpace(input.Reason))
        {
            return Refusal.Invalid("reason", SetupSentences.SayWhyThisWasDecided);
        }

        var code = number.Trim().ToUpperInvariant();
        if (await lots.StandingOfAsync(db.Set<Lot>().Where(l => l.Number == code), cancellation) is not [var found])
        {
            return Refusal.NotFound(SetupSentences.ThereIsNoLot(number));
        }

        if (found.State == state && found.Reason is not null)
        {
            return Refusal.Conflict(
                state == LotState.Released
                    ? SetupSentences.LotIsReleasedAlready(code, found.Reason)
                    : SetupSentences.LotIsInQuarantineAlready(code, found.Reason),
                RefusalCode.AlreadyDone
            );
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var decision = new LotDecision(
            stamp.NewId(),
            found.Lot.Id,
            state,
            input.Reason.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        if (state == LotState.Quarantined || found.Lot.Kind != Lot.FilmKind)
        {
            await writes.Book.AppendAsync(
                found.Lot.Id,
                state == LotState.Released ? "release-lot" : "quarantine-lot",
                [decision],
                cancellation
            );
        }
        else if (await filmRoute.ReleaseAsync(found.Lot, decision, stamp, cancellation) is { } refusal)
        {
            return refusal;
        }

        return Answer.Ok(LotAnswer.Of(found with { State = state, Reason = decision.Reason }));
    }
}
