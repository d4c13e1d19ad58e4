using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Notices;

/// <summary>
/// The quality lead has seen a notice, with a note or without. It is looked for anew, so that only what stands can be acknowledged.
/// </summary>
public sealed class AcknowledgeNotice(WorkshopContext db, ReadNotices notices, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/quality/notices/{key}/acknowledge", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Analyses,
                "acknowledgeNotice",
                "Acknowledge a notice, with a note or without; it comes back when something new adds to it."
            );

    /// <summary>A note to go with the acknowledgement.</summary>
    /// <param name="Note" example="new roll, being looked into">What is to be remembered.</param>
    public sealed record Input(string? Note = null);

    /// <param name="key" example="9f2c5a7d0b1e4c3a8d6f2b7e">The notice's key.</param>
    public static Task<Results<Recorded<AcknowledgementRow>, Problem>> HandleAsync(
        string key,
        Input? input,
        SignedIn signedIn,
        AcknowledgeNotice use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(key, input?.Note, signedIn.Actor, cancellation));

    public async Task<Answer<AcknowledgementRow>> RunAsync(string key, string? note, Actor actor, CancellationToken cancellation)
    {
        if (await db.Set<NoticeAcknowledgement>().AnyAsync(a => a.Key == key, cancellation))
        {
            return Refusal.Conflict(QualitySentences.NoticeIsAcknowledgedAlready, RefusalCode.AlreadyDone);
        }

        if (await notices.FindAsync(key, cancellation) is not { } notice)
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoSuchNoticeNow);
        }

        var acknowledgement = notice.Acknowledge(note, writes.Stamp(actor.PersonId));
        await writes.Book.AppendAsync(acknowledgement.Id, "acknowledge-notice", [acknowledgement], cancellation);
        return Answer.Created(ReadNotices.RowOf(acknowledgement, new(actor.Badge, actor.Name)));
    }
}
