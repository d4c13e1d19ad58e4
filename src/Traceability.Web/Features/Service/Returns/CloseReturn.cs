using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work.Delivery;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Closes a return with what was done.</summary>
public sealed class CloseReturn(ReturnDesk desk) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/returns/{id:guid}/close", HandleAsync)
            .For(Role.Service)
            .Is(Subjects.Returns, "closeReturn", "Close a return with what was done; refused without a finding and an outcome.");

    /// <summary>The end of a return.</summary>
    /// <param name="Action" example="cleaned, dried, measured again">What was done.</param>
    /// <param name="OccurredAt" example="2026-01-31T14:20:00Z">When; now, when left out.</param>
    public sealed record Input(string Action, DateTimeOffset? OccurredAt = null);

    /// <param name="id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The return.</param>
    public static Task<Results<Recorded<ReturnStep>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        CloseReturn use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(id, input, signedIn.Actor, cancellation));

    public Task<Answer<ReturnStep>> RunAsync(Guid returnId, Input input, Actor actor, CancellationToken cancellation) =>
        desk.OnReturnAsync(
            returnId,
            input.OccurredAt,
            actor,
            (part, stamp) =>
                desk.Append(part, "close-return", ReturnedUnit.Close(part.Dossier, returnId, input.Action, stamp), c => c.ReturnId),
            cancellation
        );
}
