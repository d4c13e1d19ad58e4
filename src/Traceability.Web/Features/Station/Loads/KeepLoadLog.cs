using Traceability.Domain.Gates;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Station.AttachEvidence;
using Traceability.Web.Features.Station.Bench;
using Traceability.Web.Features.Station.TakeReadings;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.Loads;

/// <summary>Keeps a file as evidence of every part in a load: the logger's CSV of a cure or soak.</summary>
public sealed class KeepLoadLog(Writes writes, WorkBench bench, LoadBench loads, SendingInstrument sending)
{
    public static async Task<IResult> HandleAsync(
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
        var (file, wrong) = await KeepEvidence.FileOfAsync(http, name, fullScaleV);
        return wrong ?? await writes.RunAsync(cancellation => use.RunAsync(id, file!, signedIn.Actor, occurredAt, cancellation));
    }

    public async Task<Answer> RunAsync(
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
        var named = KeepEvidence.Named(open[0].Route.Find(load.Load.Stage), file);
        var decision = EvidenceFiles.AttachToLoad(load.Load, open, named, bench.ContextAt(stamp.OccurredAt, actor), stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        await writes.Book.KeepFileAsync(file.Sha256, file.Bytes.ToArray(), cancellation);
        await writes.Book.AppendAsync(loadId, "attach-load-log", decision.Facts, cancellation);
        var kept = decision.Value!;
        return Answer.Created(new KeepEvidence.Output(kept.Id, kept.Name, kept.Kind, kept.Sha256, kept.LengthBytes));
    }
}
