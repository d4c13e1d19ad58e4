using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Delivery;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>What the service desk records about a unit that came back: the return, findings, and its end.</summary>
public sealed class TakeBack(WorkshopContext db, Writes writes, WorkBench bench) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/returns", TakeBack.OpenAsync).For(Role.Service).Is(Subjects.Returns, "openReturn", "Take a unit back.");
        api.MapPost("/returns/{id:guid}/findings", TakeBack.FindAsync)
            .For(Role.Service)
            .Is(Subjects.Returns, "recordFinding", "Record a finding.");
        api.MapPost("/returns/{id:guid}/outcome", TakeBack.ComeOutAsync)
            .For(Role.Service)
            .Is(
                Subjects.Returns,
                "recordOutcome",
                "Say how a return came out: repaired, no-fault, scrapped or unrepaired; the latest counts."
            );
        api.MapPost("/returns/{id:guid}/close", TakeBack.CloseAsync)
            .For(Role.Service)
            .Is(Subjects.Returns, "closeReturn", "Close a return with what was done; refused without a finding and an outcome.");
    }

    public sealed record Input(string Serial, string Complaint, string? CustomerReference = null, DateTimeOffset? OccurredAt = null);

    public sealed record FindingInput(string Code, string Description, DateTimeOffset? OccurredAt = null);

    public sealed record OutcomeInput(ReturnOutcomeKind Kind, string Reason, DateTimeOffset? OccurredAt = null);

    public sealed record ClosingInput(string Action, DateTimeOffset? OccurredAt = null);

    public sealed record Output(Guid Id, Guid Return, PartAnswer Part);

    public static Task<Results<Recorded<Output>, Problem>> OpenAsync(Input input, SignedIn signedIn, TakeBack use, Writes writes) =>
        writes.RecordAsync(cancellation => use.OpenAsync(input, signedIn.Actor, cancellation));

    public static Task<Results<Recorded<Output>, Problem>> FindAsync(
        Guid id,
        FindingInput input,
        SignedIn signedIn,
        TakeBack use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.FindAsync(id, input, signedIn.Actor, cancellation));

    public static Task<Results<Recorded<Output>, Problem>> ComeOutAsync(
        Guid id,
        OutcomeInput input,
        SignedIn signedIn,
        TakeBack use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.ComeOutAsync(id, input, signedIn.Actor, cancellation));

    public static Task<Results<Recorded<Output>, Problem>> CloseAsync(
        Guid id,
        ClosingInput input,
        SignedIn signedIn,
        TakeBack use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.CloseAsync(id, input, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> OpenAsync(Input input, Actor actor, CancellationToken cancellation)
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

    public Task<Answer<Output>> FindAsync(Guid returnId, FindingInput input, Actor actor, CancellationToken cancellation) =>
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

    public Task<Answer<Output>> ComeOutAsync(Guid returnId, OutcomeInput input, Actor actor, CancellationToken cancellation) =>
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

    public Task<Answer<Output>> CloseAsync(Guid returnId, ClosingInput input, Actor actor, CancellationToken cancellation) =>
        OnReturnAsync(
            returnId,
            input.OccurredAt,
            actor,
            (part, stamp) => Append(part, "close-return", ReturnedUnit.Close(part.Dossier, returnId, input.Action, stamp), c => c.ReturnId),
            cancellation
        );

    private async Task<Answer<Output>> OnReturnAsync(
        Guid returnId,
        DateTimeOffset? occurredAt,
        Actor actor,
        Func<OpenPart, Stamp, Answer<Output>> decide,
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

    private Answer<Output> Append<T>(OpenPart part, string command, Decision<T> decision, Func<T, Guid> returnOf)
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
