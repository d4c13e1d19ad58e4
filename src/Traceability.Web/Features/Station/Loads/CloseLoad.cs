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

/// <summary>
/// Ends a load, or takes named parts out of it: each gets its own closing and its own verdict. Parts closed or abandoned one by one
/// meanwhile are left alone; those that are not named stay in the load and are closed later.
/// </summary>
public sealed class CloseLoad(
    Writes writes,
    WorkBench bench,
    GateContexts contexts,
    LoadLocks loads,
    EvidenceQuery evidence,
    DossierReader dossiers
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/loads/{id:guid}/close", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .Is(
                Subjects.Loads,
                "closeLoad",
                "End the load, or take the named parts out of it; each part gets its own closing and verdict."
            );

    /// <summary>What is said at the end.</summary>
    /// <param name="Parts">The serials or carriers of the parts that are taken out; all that are still in it, when it is left out.</param>
    /// <param name="Note" example="cable replaced before the test">A remark that is kept with it.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(IReadOnlyList<string>? Parts = null, string? Note = null, DateTimeOffset? OccurredAt = null);

    /// <summary>What the load came to.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c06">The load's id.</param>
    /// <param name="Results">One closing for each part.</param>
    public sealed record Output(Guid Id, IReadOnlyList<ClosingAnswer> Results);

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c06">The load.</param>
    public static Task<Results<Changed<Output>, Problem>> HandleAsync(
        Guid id,
        SignedIn signedIn,
        CloseLoad use,
        Writes writes,
        Input? input = null
    ) => writes.ChangeAsync(cancellation => use.RunAsync(id, input ?? new(), signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(Guid loadId, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (await loads.OpenAsync(loadId, cancellation) is not { } load)
        {
            return Refusal.NotFound(StationSentences.ThereIsNoLoad(loadId));
        }

        if (!load.StillOpen.Any())
        {
            return Refusal.Conflict(StationSentences.LoadIsClosedAlready, RefusalCode.AlreadyDone);
        }

        var (open, wrong) = await PartsToCloseAsync(load, input.Parts, cancellation);
        if (wrong is not null)
        {
            return wrong;
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var ending = new List<EndingPart>();
        foreach (var (part, attempt) in open)
        {
            ending.Add(
                new(
                    part.Dossier,
                    attempt.Id,
                    await evidence.FilesOfAsync(part.Dossier, attempt.Id, cancellation),
                    await contexts.EndingAsync(part.Dossier, attempt, stamp.OccurredAt, actor, cancellation)
                )
            );
        }

        var decision = LoadRuns.Close(ending, input.Note, stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        var results = new List<ClosingAnswer>();
        foreach (var ((part, attempt), before, ended) in open.Zip(ending, decision.Value!))
        {
            writes.Book.Append(part, "close-attempt", ended.Facts);
            results.Add(ClosingAnswer.Of(ended.Closing, part.Dossier.Route.Find(attempt.Stage)!, part.Dossier, before.Context));
        }

        return Answer.Ok(new Output(loadId, results));
    }

    /// <summary>The parts of the load that end now: those named by serial or carrier, or all that are still in it.</summary>
    private async Task<(List<(OpenPart Part, AttemptView Attempt)> Parts, Refusal? Refusal)> PartsToCloseAsync(
        LockedLoad load,
        IReadOnlyList<string>? names,
        CancellationToken cancellation
    )
    {
        var open = load.StillOpen.ToList();
        if (names is null)
        {
            return (open, null);
        }

        if (names.Count == 0)
        {
            return ([], Refusal.Invalid("parts", StationSentences.NameThePartsToTakeOut));
        }

        var taken = new List<(OpenPart Part, AttemptView Attempt)>();
        foreach (var name in names)
        {
            if (await dossiers.FindAsync(name, cancellation) is not { } id || load.Parts.All(p => p.Dossier.Part.Id != id))
            {
                return ([], Refusal.Invalid("parts", StationSentences.PartIsNotInThisLoad(name)));
            }

            if (open.FindIndex(o => o.Part.Dossier.Part.Id == id) is not (>= 0 and var at))
            {
                return ([], Refusal.Conflict(StationSentences.PartIsOutOfTheLoadAlready(name)));
            }

            if (taken.Exists(t => t.Part.Dossier.Part.Id == id))
            {
                return ([], Refusal.Invalid("parts", StationSentences.PartIsNamedTwice(name)));
            }

            taken.Add(open[at]);
        }

        return (taken, null);
    }
}
