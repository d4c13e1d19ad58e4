using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Work.Loads;

/// <summary>A part of a load that starts: its attempt, and the facts that are the part's own.</summary>
public sealed record LoadedPart(Guid PartId, Attempt Attempt, IReadOnlyList<Fact> Facts);

/// <summary>A load as it starts.</summary>
public sealed record LoadStart(Load Load, IReadOnlyList<LoadedPart> Parts);

/// <summary>
/// Starts one run for many parts (a cure, a soak): every gate is judged, and one that is closed keeps the whole load from starting.
/// </summary>
public static partial class LoadRuns
{
    /// <summary>Leads to the load and an attempt for every part; the decision's own facts hold the load alone.</summary>
    public static Decision<LoadStart> Open(IReadOnlyList<Dossier> parts, string stageCode, string station, GateContext context, Stamp stamp)
    {
        if (parts.Select(p => p.Route.Find(stageCode)).FirstOrDefault(s => s is { Loads: false }) is { } single)
        {
            return Refusal.Invalid("stage", RefusalTexts.IsDonePartByPart(single.Title));
        }

        var codes = (context.Instruments ?? []).Select(i => i.Instrument.Code);
        var load = new Load(stamp.NewId(), stageCode, station, [.. codes], stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        var decisions = parts.Select(p => (p.Part, Decision: Attempts.Open(p, stageCode, station, load.Id, context, stamp))).ToList();
        return PartsRefused.From(decisions.Select(d => (d.Part.Serial, d.Decision.Refusal)), RefusalTexts.LoadWasNotStarted) is { } refusal
            ? refusal
            : Decision.Accept(
                new LoadStart(load, [.. decisions.Select(d => new LoadedPart(d.Part.Id, d.Decision.Value!, d.Decision.Facts))]),
                load
            );
    }
}
