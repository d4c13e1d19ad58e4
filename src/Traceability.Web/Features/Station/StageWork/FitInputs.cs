using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>Fits a part or some of a lot at a position of the stage now open; one or several, all or none.</summary>
public sealed class FitInputs(Writes writes, WorkBench bench, GateContexts contexts, SlotReader slots) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/attempts/{id:guid}/fittings", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .TakesOneOrMany<Input>()
            .Is(Subjects.Attempts, "fitInputs", "Fit a part or a lot at a position, or a list.");

    /// <summary>What is fitted at one position: either a part or some of a lot.</summary>
    /// <param name="Position" example="front-diaphragm">The position.</param>
    /// <param name="Child" example="DD26-00417">The serial of the part that is fitted, or its carrier.</param>
    /// <param name="Lot" example="LOT-0412">The number of the lot that is fitted from.</param>
    /// <param name="Quantity" example="2.5">How much of the lot, in the lot's unit; above 0.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(
        string Position,
        string? Child = null,
        string? Lot = null,
        NumberText? Quantity = null,
        DateTimeOffset? OccurredAt = null
    );

    /// <summary>What was fitted at one position.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c05">The fitting's id.</param>
    /// <param name="Position" example="front-diaphragm">The position.</param>
    /// <param name="Child" example="DD26-00417">The serial of the part.</param>
    /// <param name="Lot" example="LOT-0412">The number of the lot.</param>
    /// <param name="Quantity" example="2.5">How much of the lot, in the lot's unit.</param>
    public sealed record FittingAnswer(Guid Id, string Position, string? Child, string? Lot, decimal? Quantity);

    /// <summary>What was fitted.</summary>
    /// <param name="Serial" example="CD26-00034">The serial of the part that it was fitted in.</param>
    /// <param name="Fittings">One for each position.</param>
    public sealed record Output(string Serial, IReadOnlyList<FittingAnswer> Fittings);

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt.</param>
    /// <param name="body">One fitting or a list of them: all are recorded, or none.</param>
    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        Guid id,
        JsonElement body,
        SignedIn signedIn,
        FitInputs use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(id, OneOrMany.Read<Input>(body), signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(Guid attemptId, IReadOnlyList<Input> inputs, Actor actor, CancellationToken cancellation)
    {
        if (inputs.Count == 0)
        {
            return Refusal.Invalid("fittings", StationSentences.NoFittingWasSent);
        }

        var occurredAt = inputs.Max(i => i.OccurredAt);
        if (await bench.ProblemAsync(occurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        var (requests, bad) = ReadRequests(inputs);
        if (bad is not null)
        {
            return bad;
        }

        if (await bench.OpenByAttemptAsync(attemptId, cancellation) is not { } part)
        {
            return Refusal.NotFound(StationSentences.ThereIsNoAttempt(attemptId));
        }

        var found = await slots.ReadAsync(part.Dossier, requests, cancellation);
        if (found.Refusal is { } unknown)
        {
            return unknown;
        }

        var stamp = writes.Stamp(actor.PersonId, occurredAt);
        var named = found.ByPosition.Where(i => requests.Any(r => r.Position == i.Key)).ToDictionary();
        var decision = Fittings.Fit(part.Dossier, attemptId, contexts.At(stamp.OccurredAt, actor) with { Inputs = named }, stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "fit", decision.Facts);
        FittedChildren.MarkFitted(writes.Book, part, found.Children, stamp);
        return Answer.Created(
            new Output(
                part.Dossier.Part.Serial,
                [
                    .. decision.Value!.Select(f => new FittingAnswer(
                        f.Id,
                        f.Position,
                        (named[f.Position] as PartInput)?.Serial,
                        (named[f.Position] as LotInput)?.Lot.Number,
                        f.Quantity
                    )),
                ]
            )
        );
    }

    /// <summary>Reads the quantities, or says what is wrong with one.</summary>
    public static (IReadOnlyList<FitRequest> Requests, Refusal? Refusal) ReadRequests(IReadOnlyList<Input> inputs)
    {
        var requests = new List<FitRequest>();
        foreach (var input in inputs)
        {
            Domain.Values.EnteredDecimal? quantity = null;
            if (input.Quantity is { } text && !Domain.Values.EnteredDecimal.TryParse(text.Text, out quantity, out var problem))
            {
                return (requests, Refusal.Invalid("quantity", problem));
            }

            requests.Add(new(input.Position, input.Child, input.Lot, quantity?.Value));
        }

        return (requests, null);
    }
}
