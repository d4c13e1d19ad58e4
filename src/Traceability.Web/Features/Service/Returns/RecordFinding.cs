using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work.Delivery;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Setup.Kinds;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Records something that was found on a unit that came back.</summary>
public sealed class RecordFinding(ReturnDesk desk, KindDoor kinds) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/returns/{id:guid}/findings", HandleAsync)
            .For(Role.Service)
            .Is(Subjects.Returns, "recordFinding", "Record a finding.");

    /// <summary>What was found.</summary>
    /// <param name="Code" example="flux-on-ring">Its code: small letters, digits and hyphens.</param>
    /// <param name="Description" example="flux left on the ring">What it looks like, in words.</param>
    /// <param name="OccurredAt" example="2026-01-31T14:20:00Z">When it was found; now, when left out.</param>
    public sealed record Input(string Code, string Description, DateTimeOffset? OccurredAt = null);

    /// <param name="id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The return.</param>
    public static Task<Results<Recorded<ReturnStep>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        RecordFinding use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(id, input, signedIn.Actor, cancellation));

    public async Task<Answer<ReturnStep>> RunAsync(Guid returnId, Input input, Actor actor, CancellationToken cancellation) =>
        await kinds.ProblemAsync(KindOf.Finding, input.Code, cancellation) is { } retired
            ? retired
            : await desk.OnReturnAsync(
                returnId,
                input.OccurredAt,
                actor,
                (part, stamp) =>
                    desk.Append(
                        part,
                        "note-finding",
                        ReturnedUnit.Find(part.Dossier, returnId, input.Code, input.Description, stamp),
                        f => f.ReturnId
                    ),
                cancellation
            );
}
