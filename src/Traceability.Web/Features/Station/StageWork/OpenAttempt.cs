using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>Opens an attempt at a stage, if its gate is open.</summary>
public sealed class OpenAttempt(Writes writes, WorkBench bench) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/attempts", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .Is(Subjects.Attempts, "openAttempt", "Start a stage; refused with all checks when its gate is closed.");

    public sealed record Input(string Stage, string Station, IReadOnlyList<string>? Instruments = null, DateTimeOffset? OccurredAt = null);

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
            return Refusal.NotFound(StationSentences.ThereIsNoPartOrCarrier(serial));
        }

        var (instruments, unknown) = await bench.InstrumentsAsync(input.Instruments ?? [], cancellation);
        if (unknown is not null)
        {
            return unknown;
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var context = bench.ContextAt(stamp.OccurredAt, actor) with { Instruments = instruments };
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
