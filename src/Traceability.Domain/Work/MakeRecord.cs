using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Work;

/// <summary>A file handed in together with a record: the fact that it was kept, and its bytes.</summary>
public sealed record AttachedFile(string Name, string Kind, string MediaType, string Sha256, ReadOnlyMemory<byte> Bytes, decimal? FullScaleV);

/// <summary>A stage done in one go: opened, read, fitted, evidenced and closed by one command, or not at all.</summary>
public static class MakeRecord
{
    /// <summary>Leads to all facts of the attempt. The context holds instruments and inputs; the clock of a minimum time open cannot be met in one go.</summary>
    public static Decision<Closing> Decide(
        Dossier dossier, string stage, string station, IReadOnlyList<EnteredValue> values, IReadOnlyList<AttachedFile> files, string? note, GateContext context, Stamp stamp)
    {
        var facts = new List<Fact>();
        var opened = OpenAttempt.Decide(dossier, stage, station, null, context with { Inputs = null }, stamp);
        if (opened.Refusal is { } closedGate)
        {
            return closedGate;
        }

        var attempt = opened.Value!;
        Add(opened.Facts);
        var readings = TakeReadings.Decide(dossier, attempt.Id, values, ReadingSource.Entered, context, stamp);
        if (readings.Refusal is { } badReading)
        {
            return badReading;
        }

        Add(readings.Facts);
        var fitted = FitInputs.Decide(dossier, attempt.Id, context with { Inputs = NewOnly(context) }, stamp);
        if (fitted.Refusal is { } doesNotFit)
        {
            return doesNotFit;
        }

        Add(fitted.Facts);
        var evidence = new List<EvidenceFile>();
        foreach (var file in files)
        {
            var attached = AttachEvidence.Decide(dossier, attempt.Id, file, context, stamp);
            if (attached.Refusal is { } badFile)
            {
                return badFile;
            }

            Add(attached.Facts);
            evidence.Add(new(attached.Value!.Id, file.Name, attached.Value.Kind, file.Bytes, file.FullScaleV));
        }

        var closed = CloseAttempt.Decide(dossier, attempt.Id, evidence, note, context, stamp);
        return closed.Refusal is { } notYet ? notYet : Decision.Accept(closed.Value!, [.. facts, .. closed.Facts]);

        void Add(IReadOnlyList<Fact> more)
        {
            facts.AddRange(more);
            dossier = dossier.With(more);
        }
    }

    private static Dictionary<string, Input> NewOnly(GateContext context) =>
        (context.Inputs ?? new Dictionary<string, Input>()).Where(i => i.Value is PartInput { AlreadyFittedHere: false } or LotInput { AlreadyFittedHere: false }).ToDictionary();
}
