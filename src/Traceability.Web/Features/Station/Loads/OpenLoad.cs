using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Loads;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.Loads;

/// <summary>Starts one run for many parts, named by serial or carrier: all of them, or none.</summary>
public sealed class OpenLoad(Writes writes, WorkBench bench, GateContexts contexts, DossierReader dossiers) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/loads", HandleAsync).For(Role.Builder, Role.Quality).Is(Subjects.Loads, "openLoad", "Start one run for many parts.");

    private const int MostParts = 200;

    /// <summary>Which stage is started for which parts, where and with what.</summary>
    /// <param name="Stage" example="soak-warm">The stage's code.</param>
    /// <param name="Station" example="CLIMATE-1">The station's code.</param>
    /// <param name="Parts">The serials or carriers of the parts, 1 to 200.</param>
    /// <param name="Instruments">The codes of the instruments that are used.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(
        string Stage,
        string Station,
        IReadOnlyList<string> Parts,
        IReadOnlyList<string>? Instruments = null,
        DateTimeOffset? OccurredAt = null
    );

    /// <summary>The attempt of one part in the load.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt's id.</param>
    /// <param name="Serial" example="CS26-00012">The part's serial.</param>
    public sealed record AttemptOfPart(Guid Id, string Serial);

    /// <summary>The load that was opened.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c06">The load's id.</param>
    /// <param name="Stage" example="soak-warm">The stage's code.</param>
    /// <param name="Attempts">One for each part.</param>
    public sealed record Output(Guid Id, string Stage, IReadOnlyList<AttemptOfPart> Attempts);

    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(Input input, SignedIn signedIn, OpenLoad use, Writes writes) =>
        writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, input.Station, actor, cancellation) is { } problem)
        {
            return problem;
        }

        var (ids, unknown) = await FindAsync(input.Parts, cancellation);
        var (instruments, unknownInstrument) = await bench.InstrumentsAsync(input.Instruments ?? [], cancellation);
        if ((unknown ?? unknownInstrument) is { } bad)
        {
            return bad;
        }

        var parts = await writes.Book.OpenAsync(ids, cancellation);
        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var context = contexts.At(stamp.OccurredAt, actor) with { Instruments = instruments };
        var decision = LoadRuns.Open(
            [.. ids.Select(id => parts[id].Dossier)],
            input.Stage,
            input.Station.Trim().ToUpperInvariant(),
            context,
            stamp
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        var start = decision.Value!;
        await writes.Book.AppendAsync(start.Load.Id, "open-load", [start.Load], cancellation);
        foreach (var loaded in start.Parts)
        {
            writes.Book.Append(parts[loaded.PartId], "open-attempt", loaded.Facts);
        }

        return Answer.Created(
            new Output(
                start.Load.Id,
                input.Stage,
                [.. start.Parts.Select(p => new AttemptOfPart(p.Attempt.Id, parts[p.PartId].Dossier.Part.Serial))]
            )
        );
    }

    private async Task<(List<Guid> Ids, Refusal? Refusal)> FindAsync(IReadOnlyList<string> parts, CancellationToken cancellation)
    {
        if (parts.Count is 0 or > MostParts)
        {
            return ([], Refusal.Invalid("parts", StationSentences.LoadHasSoManyParts(MostParts, parts.Count)));
        }

        var ids = new List<Guid>();
        foreach (var name in parts)
        {
            if (await dossiers.FindAsync(name, cancellation) is not { } id)
            {
                return ([], Refusal.Invalid("parts", StationSentences.NoPartForTheLoad(name)));
            }

            if (ids.Contains(id))
            {
                return ([], Refusal.Invalid("parts", StationSentences.PartIsInTheLoadAlready(name)));
            }

            ids.Add(id);
        }

        return (ids, null);
    }
}
