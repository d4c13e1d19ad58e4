using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>Takes one reading or several into the attempt now open; all or none.</summary>
public sealed class TakeReadings(
    Writes writes,
    WorkBench bench,
    GateContexts contexts,
    SendingInstrument sending,
    WorkshopCalendar calendar
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/attempts/{id:guid}/readings", HandleAsync)
            .For(Role.Builder, Role.Quality, Role.Instrument)
            .TakesOneOrMany<Input>()
            .Is(Subjects.Attempts, "takeReadings", "Enter one reading, or a list.");

    /// <summary>One value that was read.</summary>
    /// <param name="Characteristic" example="insulationGOhm">The characteristic, as the route names it.</param>
    /// <param name="Value" example="412.0">
    /// The value in the route's unit, with all its digits; &gt; may stand before it where no upper limit judges it.
    /// </param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(string Characteristic, NumberText Value, DateTimeOffset? OccurredAt = null);

    /// <summary>The readings that were recorded.</summary>
    /// <param name="Serial" example="US26-00034">The part's serial.</param>
    /// <param name="Attempt" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt that they belong to.</param>
    /// <param name="Stage" example="insulation">The stage's code.</param>
    /// <param name="Readings">The readings, judged by their limits.</param>
    public sealed record Output(string Serial, Guid Attempt, string Stage, IReadOnlyList<ReadingAnswer> Readings);

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt.</param>
    /// <param name="body">One reading or a list of them: all are recorded, or none.</param>
    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        Guid id,
        JsonElement body,
        SignedIn signedIn,
        TakeReadings use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(id, OneOrMany.Read<Input>(body), signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(
        Guid attemptId,
        IReadOnlyList<Input> inputs,
        Actor actor,
        CancellationToken cancellation,
        bool sentToStation = false
    )
    {
        if (inputs.Count == 0)
        {
            return Refusal.Invalid("readings", StationSentences.NoReadingWasSent);
        }

        var (values, bad) = Parse(inputs);
        if (bad is not null)
        {
            return bad;
        }

        if (await bench.OpenByAttemptAsync(attemptId, cancellation) is not { } part)
        {
            return Refusal.NotFound(StationSentences.ThereIsNoAttempt(attemptId));
        }

        var began = part.Dossier.Attempts.First(a => a.Id == attemptId).Attempt.OccurredAt;
        if (inputs.Select(i => bench.ProblemInside(i.OccurredAt, began, actor)).FirstOrDefault(p => p is not null) is { } problem)
        {
            return problem;
        }

        var occurredAt = inputs.Max(i => i.OccurredAt);
        var stamp = writes.Stamp(actor.PersonId, occurredAt);
        // A person's reading goes straight on; only who sends as an instrument is looked up as one.
        var decision =
            actor.Is(Role.Instrument) && await sending.FindAsync(actor, cancellation) is { } instrument
                ? Readings.Send(part.Dossier, attemptId, values, instrument, mustBeNamed: !sentToStation, calendar, stamp)
                : Readings.Take(
                    part.Dossier,
                    attemptId,
                    values,
                    actor.Is(Role.Instrument) ? ReadingSource.Instrument : ReadingSource.Entered,
                    contexts.At(stamp.OccurredAt, actor),
                    stamp
                );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "take-readings", decision.Facts);
        var stage = part.Dossier.Attempts.First(a => a.Id == attemptId).Stage;
        return Answer.Created(
            new Output(
                part.Dossier.Part.Serial,
                attemptId,
                stage,
                [.. decision.Value!.Select(r => ReadingAnswer.Of(new(r, []), _ => new(actor.Badge, actor.Name)))]
            )
        );
    }

    /// <summary>Reads the numbers as they were typed, or says which of them cannot be one.</summary>
    public static (IReadOnlyList<EnteredValue> Values, Refusal? Refusal) Parse(IReadOnlyList<Input> inputs)
    {
        var values = new List<EnteredValue>();
        for (var i = 0; i < inputs.Count; i++)
        {
            if (!EnteredDecimal.TryParseReading(inputs[i].Value.Text, out var number, out var problem))
            {
                return (
                    values,
                    Refusal.Invalid($"readings[{i}].value", StationSentences.NothingWasRecorded(inputs[i].Characteristic, problem))
                );
            }

            values.Add(new(inputs[i].Characteristic, number, inputs[i].OccurredAt));
        }

        return (values, null);
    }
}
