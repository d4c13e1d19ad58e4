using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Holds;

/// <summary>Lifts a hold, with the reason.</summary>
public sealed class ReleaseHold(WorkshopContext db, Writes writes, WorkBench bench, ListHolds holds) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/holds/{id:guid}/release", HandleAsync).For(Role.Quality).Is(Subjects.Holds, "releaseHold", "Lift a hold.");

    /// <summary>Why the hold is released.</summary>
    /// <param name="Reason" example="seen under the lens: none">Why it may be used again.</param>
    /// <param name="OccurredAt" example="2026-11-14T09:00:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(string Reason, DateTimeOffset? OccurredAt = null);

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The hold's id.</param>
    public static Task<Results<Recorded<HoldAnswer>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        ReleaseHold use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(id, input, signedIn.Actor, cancellation));

    public async Task<Answer<HoldAnswer>> RunAsync(Guid holdId, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (string.IsNullOrWhiteSpace(input.Reason))
        {
            return Refusal.Invalid("reason", QualitySentences.SayWhyTheHoldIsLifted);
        }

        if (await holds.FindAsync(holdId, cancellation) is not var (hold, answer))
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoHold(holdId));
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var release = new HoldRelease(stamp.NewId(), holdId, input.Reason.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        var part = hold.PartId is { } partId ? await writes.Book.OpenAsync(partId, cancellation) : null;
        if (part is not null)
        {
            writes.Book.Append(part, "lift-hold", release);
        }
        else
        {
            await writes.Book.AppendAsync(hold.SubjectId, "lift-hold", [release], cancellation);
        }

        // Asked after the subject is locked, so that of two who lift it at once the second is told.
        return await db.Set<HoldRelease>().AnyAsync(r => r.HoldId == holdId, cancellation)
            ? Refusal.Conflict(QualitySentences.ThisHoldIsLiftedAlready, RefusalCode.AlreadyDone)
            : Answer.Created(
                answer with
                {
                    Open = false,
                    ReleaseReason = release.Reason,
                    ReleasedAt = release.OccurredAt,
                    ReleasedBy = new(actor.Badge, actor.Name),
                }
            );
    }
}
