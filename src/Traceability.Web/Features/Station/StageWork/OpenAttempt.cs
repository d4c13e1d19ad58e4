using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>Opens an attempt at a stage, if its gate is open.</summary>
public sealed class OpenAttempt(Writes writes, WorkBench bench, GateContexts contexts) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/attempts", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .Is(Subjects.Attempts, "openAttempt", "Start a stage; refused with all checks when its gate is closed.");

    /// <summary>Which stage is started, where and with what.</summary>
    /// <param name="Stage" example="insulation">The stage's code.</param>
    /// <param name="Station" example="INSUL-1">The station's code.</param>
    /// <param name="Instruments">The codes of the instruments that are used.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(string Stage, string Station, IReadOnlyList<string>? Instruments = null, DateTimeOffset? OccurredAt = null);

    /// <summary>The attempt that was opened.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt's id.</param>
    /// <param name="Serial" example="US26-00034">The part's serial.</param>
    /// <param name="Stage" example="insulation">The stage's code.</param>
    /// <param name="Title" example="Insulation test">The stage's title.</param>
    /// <param name="Number" example="1">Its number among the attempts of this part at this stage, from 1.</param>
    /// <param name="Station" example="INSUL-1">The station's code.</param>
    /// <param name="OpenedAt" example="2026-11-25T08:05:00Z">When it was opened.</param>
    /// <param name="Cautions">Warnings that belong to the stage.</param>
    /// <param name="LocalRules" example="Local rules and licensed practice prevail.">What goes before these warnings.</param>
    public sealed record Output(
        Guid Id,
        string Serial,
        string Stage,
        string Title,
        int Number,
        string Station,
        DateTimeOffset OpenedAt,
        IReadOnlyList<string> Cautions,
        string LocalRules
    );

    /// <param name="serial" example="US26-00034">The part's serial, or the carrier that it lies in.</param>
    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string serial,
        Input input,
        SignedIn signedIn,
        OpenAttempt use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(serial, input, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(string serial, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, input.Station, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (await bench.OpenAsync(serial, cancellation) is not { } part)
        {
            return Refusal.NotFound(PartsSentences.ThereIsNoPartOrCarrier(serial));
        }

        var (instruments, unknown) = await bench.InstrumentsAsync(input.Instruments ?? [], cancellation);
        if (unknown is not null)
        {
            return unknown;
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var context = contexts.At(stamp.OccurredAt, actor) with { Instruments = instruments };
        var decision = Attempts.Open(part.Dossier, input.Stage, input.Station.Trim().ToUpperInvariant(), null, context, stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "open-attempt", decision.Facts);
        var (attempt, stage) = (decision.Value!, part.Dossier.Route.Find(input.Stage)!);
        return Answer.Created(
            new Output(
                attempt.Id,
                part.Dossier.Part.Serial,
                stage.Code,
                stage.Title,
                attempt.Number,
                attempt.Station,
                attempt.OccurredAt,
                [.. stage.Cautions.Select(c => Cautions.Texts[c])],
                Cautions.LocalRulesPrevail
            )
        );
    }
}
