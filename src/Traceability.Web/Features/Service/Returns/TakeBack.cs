using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Delivery;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Station.Bench;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>What the service desk records about a unit that came back: the return, findings, and its end.</summary>
public sealed class TakeBack(WorkshopContext db, Writes writes, WorkBench bench)
{
    public sealed record Input(string Serial, string Complaint, string? CustomerReference = null, DateTimeOffset? OccurredAt = null);

    public sealed record FindingInput(string Code, string Description, DateTimeOffset? OccurredAt = null);

    public sealed record OutcomeInput(ReturnOutcomeKind Kind, string Reason, DateTimeOffset? OccurredAt = null);

    public sealed record ClosingInput(string Action, DateTimeOffset? OccurredAt = null);

    public sealed record Output(Guid Id, Guid Return, PartAnswer Part);

    public static Task<IResult> OpenAsync(Input input, SignedIn signedIn, TakeBack use, Writes writes) =>
        writes.RunAsync(cancellation => use.OpenAsync(input, signedIn.Actor, cancellation));

    public static Task<IResult> FindAsync(Guid id, FindingInput input, SignedIn signedIn, TakeBack use, Writes writes) =>
        writes.RunAsync(cancellation => use.FindAsync(id, input, signedIn.Actor, cancellation));

    public static Task<IResult> ComeOutAsync(Guid id, OutcomeInput input, SignedIn signedIn, TakeBack use, Writes writes) =>
        writes.RunAsync(cancellation => use.ComeOutAsync(id, input, signedIn.Actor, cancellation));

    public static Task<IResult> CloseAsync(Guid id, ClosingInput input, SignedIn signedIn, TakeBack use, Writes writes) =>
        writes.RunAsync(cancellation => use.CloseAsync(id, input, signedIn.Actor, cancellation));

    public async Task<Answer> OpenAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        return await bench.OpenAsync(input.Serial, cancellation) is not { } part
            ? Refusal.Invalid("serial", ServiceSentences.ThereIsNoPart(input.Serial))
            : Append(
                part,
                "open-return",
                ReturnedUnit.Open(part.Dossier, input.Complaint, input.CustomerReference, writes.Stamp(actor.PersonId, input.OccurredAt)),
                r => r.Id
            );
    }

    public Task<Answer> FindAsync(Guid returnId, FindingInput input, Actor actor, CancellationToken cancellation) =>
        OnReturnAsync(
            returnId,
            input.OccurredAt,
            actor,
            (part, stamp) =>
                Append(
                    part,
                    "note-finding",
                    ReturnedUnit.Find(part.Dossier, returnId, input.Code, input.Description, stamp),
                    f => f.ReturnId
                ),
            cancellation
        );

    public Task<Answer> ComeOutAsync(Guid returnId, OutcomeInput input, Actor actor, CancellationToken cancellation) =>
        OnReturnAsync(
            returnId,
            input.OccurredAt,
            actor,
            (part, stamp) =>
                Append(
                    part,
                    "return-outcome",
                    ReturnedUnit.ComeOut(part.Dossier, returnId, input.Kind, input.Reason, stamp),
                    o => o.ReturnId
                ),
            cancellation
        );

    public Task<Answer> CloseAsync(Guid returnId, ClosingInput input, Actor actor, CancellationToken cancellation) =>
        OnReturnAsync(
            returnId,
            input.OccurredAt,
            actor,
            (part, stamp) => Append(part, "close-return", ReturnedUnit.Close(part.Dossier, returnId, input.Action, stamp), c => c.ReturnId),
            cancellation
        );

    private async Task<Answer> OnReturnAsync(
        Guid returnId,
        DateTimeOffset? occurredAt,
        Actor actor,
        Func<OpenPart, Stamp, Answer> decide,
        CancellationToken cancellation
    )
    {
        if (await bench.ProblemAsync(occurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        var partId = await db.Set<UnitReturn>().Where(r => r.Id == returnId).Select(r => (Guid?)r.PartId).FirstOrDefaultAsync(cancellation);
        return partId is null
            ? Refusal.NotFound(ServiceSentences.ThereIsNoReturn(returnId))
            : decide((await writes.Book.OpenAsync(partId.Value, cancellation))!, writes.Stamp(actor.PersonId, occurredAt));
    }

    private Answer Append<T>(OpenPart part, string command, Decision<T> decision, Func<T, Guid> returnOf)
        where T : Fact
    {
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, command, decision.Facts);
        return Answer.Created(new Output(decision.Value!.Id, returnOf(decision.Value), bench.AnswerOf(part.Dossier)));
    }
}
