using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Work.Loads;

/// <summary>A part of a load that ends, with what its attempt is judged on.</summary>
public sealed record EndingPart(Dossier Dossier, Guid AttemptId, IReadOnlyList<EvidenceFile> Evidence, GateContext Context);

/// <summary>What the end of a load led to for one part.</summary>
public sealed record EndedPart(Closing Closing, IReadOnlyList<Fact> Facts);

/// <summary>Ends a load: every attempt of it that is still open is closed with a verdict of its own, or none is.</summary>
public static partial class LoadRuns
{
    /// <summary>
    /// Leads to one closing for each part, in the same order; the decision's own facts are empty, for they belong to the parts.
    /// </summary>
    public static Decision<IReadOnlyList<EndedPart>> Close(IReadOnlyList<EndingPart> parts, string? note, Stamp stamp)
    {
        var decisions = parts
            .Select(p => (p.Dossier.Part.Serial, Decision: Attempts.Close(p.Dossier, p.AttemptId, p.Evidence, note, p.Context, stamp)))
            .ToList();
        return PartsRefused.From(decisions.Select(d => (d.Serial, d.Decision.Refusal)), RefusalTexts.LoadWasNotClosed) is { } refusal
            ? refusal
            : Decision.Accept<IReadOnlyList<EndedPart>>([.. decisions.Select(d => new EndedPart(d.Decision.Value!, d.Decision.Facts))]);
    }
}
