using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work.Delivery;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Says how a return came out; of several the latest counts.</summary>
public sealed class RecordOutcome(ReturnDesk desk) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/returns/{id:guid}/outcome", HandleAsync)
            .For(Role.Service)
            .Is(
                Subjects.Returns,
                "recordOutcome",
                "Say how a return came out: repaired, no-fault, scrapped or unrepaired; the latest counts."
            );

    /// <summary>How a return came out.</summary>
    /// <param name="Kind" example="repaired">How it came out.</param>
    /// <param name="Reason" example="ring cleaned and dried">Why it is said so.</param>
    /// <param name="OccurredAt" example="2026-01-31T14:20:00Z">When; now, when left out.</param>
    public sealed record Input(ReturnOutcomeKind Kind, string Reason, DateTimeOffset? OccurredAt = null);

    /// <param name="id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The return.</param>
    public static Task<Results<Recorded<ReturnStep>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        RecordOutcome use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(id, input, signedIn.Actor, cancellation));

    public Task<Answer<ReturnStep>> RunAsync(Guid returnId, Input input, Actor actor, CancellationToken cancellation) =>
        desk.OnReturnAsync(
            returnId,
            input.OccurredAt,
            actor,
            (part, stamp) =>
                desk.Append(
                    part,
                    "return-outcome",
                    ReturnedUnit.ComeOut(part.Dossier, returnId, input.Kind, input.Reason, stamp),
                    o => o.ReturnId
                ),
            cancellation
        );
}
