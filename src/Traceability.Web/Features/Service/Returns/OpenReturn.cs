using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Delivery;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Takes a unit back, with what is wrong with it in the customer's words.</summary>
public sealed class OpenReturn(Writes writes, WorkBench bench, ReturnDesk desk) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/returns", HandleAsync).For(Role.Service).Is(Subjects.Returns, "openReturn", "Take a unit back.");

    /// <summary>A unit that came back.</summary>
    /// <param name="Serial" example="US-0034">The unit's serial.</param>
    /// <param name="Complaint" example="crackles on damp evenings">What is wrong with it, in the customer's words.</param>
    /// <param name="CustomerReference" example="ORDER-7">The customer's own number for the matter.</param>
    /// <param name="OccurredAt" example="2026-01-31T14:20:00Z">When it came; now, when left out.</param>
    public sealed record Input(string Serial, string Complaint, string? CustomerReference = null, DateTimeOffset? OccurredAt = null);

    public static Task<Results<Recorded<ReturnStep>, Problem>> HandleAsync(Input input, SignedIn signedIn, OpenReturn use, Writes writes) =>
        writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor, cancellation));

    public async Task<Answer<ReturnStep>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        return await bench.OpenAsync(input.Serial, cancellation) is not { } part
            ? Refusal.Invalid("serial", ServiceSentences.ThereIsNoPart(input.Serial))
            : desk.Append(
                part,
                "open-return",
                ReturnedUnit.Open(part.Dossier, input.Complaint, input.CustomerReference, writes.Stamp(actor.PersonId, input.OccurredAt)),
                r => r.Id
            );
    }
}
