using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Station.StageWork;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.Loads;

/// <summary>Keeps a file as evidence of every part in a load: the logger's CSV of a cure or soak.</summary>
public sealed class KeepLoadLog(Writes writes, WorkBench bench, GateContexts contexts, LoadLocks loads, SendingInstrument sending)
    : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/loads/{id:guid}/log", HandleAsync)
            .For(Role.Builder, Role.Quality, Role.Instrument)
            .TakesFile("text/csv", "audio/wav", "image/jpeg", "image/png")
            .Is(
                Subjects.Loads,
                "keepLoadLog",
                "Keep the logger's CSV for the parts still in the load; it may be sent again, more completely, for those that stay longer."
            );

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c06">The load.</param>
    /// <param name="name" example="front">
    /// The name under which the stage asks for the file; may be left out where the stage asks for one of its sort.
    /// </param>
    /// <param name="fullScaleV" example="2.83">Of a recording: the volts (peak) at full scale.</param>
    /// <param name="occurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public static async Task<Results<Recorded<AttachEvidence.Output>, Problem>> HandleAsync(
        Guid id,
        HttpContext http,
        SignedIn signedIn,
        KeepLoadLog use,
        Writes writes,
        string? name = null,
        decimal? fullScaleV = null,
        DateTimeOffset? occurredAt = null
    )
    {
        var (file, wrong) = await AttachEvidence.FileOfAsync(http, name, fullScaleV);
        return wrong is not null
            ? wrong
            : await writes.RecordAsync(cancellation => use.RunAsync(id, file!, signedIn.Actor, occurredAt, cancellation));
    }

    public async Task<Answer<AttachEvidence.Output>> RunAsync(
        Guid loadId,
        AttachedFile file,
        Actor actor,
        DateTimeOffset? occurredAt,
        CancellationToken cancellation
    )
    {
        if (await loads.OpenAsync(loadId, cancellation) is not { } load)
        {
            return Refusal.NotFound(StationSentences.ThereIsNoLoad(loadId));
        }

        if (bench.ProblemInside(occurredAt, load.Load.OccurredAt, actor) is { } problem)
        {
            return problem;
        }

        if (await sending.FindAsync(actor, cancellation) is { } instrument && !load.Load.Instruments.Contains(instrument.Instrument.Code))
        {
            return Readings.NotNamed(instrument.Instrument.Code);
        }

        var open = load.StillOpen.Select(p => p.Part.Dossier).ToList();
        if (open.Count == 0)
        {
            return Refusal.Conflict(StationSentences.LogOfAClosedLoad, RefusalCode.AttemptEnded);
        }

        var stamp = writes.Stamp(actor.PersonId, occurredAt);
        var named = AttachEvidence.WithName(open[0].Route.Find(load.Load.Stage), file);
        var decision = EvidenceFiles.AttachToLoad(load.Load, open, named, contexts.At(stamp.OccurredAt, actor), stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        await writes.Book.KeepFileAsync(file.Sha256, file.Bytes.ToArray(), cancellation);
        await writes.Book.AppendAsync(loadId, "attach-load-log", decision.Facts, cancellation);
        var kept = decision.Value!;
        return Answer.Created(new AttachEvidence.Output(kept.Id, kept.Name, kept.Kind, kept.Sha256, kept.LengthBytes));
    }
}
