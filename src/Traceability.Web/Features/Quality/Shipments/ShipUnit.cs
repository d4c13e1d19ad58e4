using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Delivery;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Shipments;

/// <summary>Sends a certified unit out.</summary>
public sealed class ShipUnit(Writes writes, WorkBench bench, InsideQuery inside) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/shipments", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Certificates, "shipUnit", "Record that a certified unit has left.");

    /// <summary>References are looked up, and the index over them holds short texts only.</summary>
    public const int MaxReference = ReturnedUnit.MaxReference;

    public sealed record Input(string? CustomerReference = null, DateTimeOffset? OccurredAt = null);

    public sealed record Output(Guid Id, DateTimeOffset ShippedAt, string? CustomerReference, PartAnswer Part);

    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string serial,
        SignedIn signedIn,
        ShipUnit use,
        Writes writes,
        Input? input = null
    ) => writes.RecordAsync(cancellation => use.RunAsync(serial, input ?? new(), signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(string serial, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (input.CustomerReference?.Length > MaxReference)
        {
            return Refusal.Invalid("customerReference", QualitySentences.CustomerReferenceIsTooLong(MaxReference));
        }

        if (await bench.OpenAsync(serial, cancellation) is not { } part)
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoPartOrCarrier(serial));
        }

        var reference = string.IsNullOrWhiteSpace(input.CustomerReference) ? null : input.CustomerReference.Trim();
        var lastWorkInside = await inside.LastWorkAsync(part.Dossier.Part.Id, cancellation);
        var decision = ReleaseUnit.Ship(part.Dossier, lastWorkInside, reference, writes.Stamp(actor.PersonId, input.OccurredAt));
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "ship", decision.Facts);
        var shipment = decision.Value!;
        return Answer.Created(new Output(shipment.Id, shipment.OccurredAt, shipment.CustomerReference, bench.AnswerOf(part.Dossier)));
    }
}
