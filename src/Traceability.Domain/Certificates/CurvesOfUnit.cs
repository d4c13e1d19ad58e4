using Traceability.Domain.Evidence;
using Traceability.Domain.Gates;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Values;
using AcousticCurves = Traceability.Domain.Stages.AcousticTest.AcousticCurves;

namespace Traceability.Domain.Certificates;

/// <summary>The responses of a unit and of what is in it, drawn as they were judged: relative to their own level at 1 kHz.</summary>
internal static class CurvesOfUnit
{
    public static IReadOnlyList<ResponseCurve> Pictures(CertificateFacts facts, IReadOnlyList<Dossier> parts, WorkshopCalendar calendar) =>
        [.. from part in parts.Reverse()
            from stage in part.Route.Stages
            let pass = part.CountingPass(stage.Code)
            where pass is not null
            from curve in PicturesOf(part, stage, pass, facts, calendar)
            select curve];

    private static IEnumerable<ResponseCurve> PicturesOf(Dossier part, Stage stage, AttemptView pass, CertificateFacts facts, WorkshopCalendar calendar)
    {
        var traces = CertificateFacts.ResponsesOf(part).Where(e => pass.Evidence.Contains(e) && facts.Files.ContainsKey(e.Id))
            .Select(e => (e.Name, Trace: TraceOf(stage, e.Name, facts.Files[e.Id]))).Where(t => t.Trace is not null).ToLookup(t => IsMasked(stage, t.Name), t => t.Trace!);
        var conditions = $"{AcousticCurves.Caption(stage)} Measured {calendar.Say(pass.Ending!.OccurredAt)}.";
        if (traces[true].Any())
        {
            var mask = stage.Parameters.Mask!.Select(c => new MaskPoint((double)c.FrequencyHz, (double)c.LowerDb, (double)c.UpperDb));
            yield return new($"{part.Part.Serial}: {stage.Title}, against its mask", [.. traces[true]], [.. mask], conditions);
        }

        if (traces[false].Any())
        {
            yield return new($"{part.Part.Serial}: {stage.Title}, for information", [.. traces[false]], [], conditions);
        }
    }

    private static bool IsMasked(Stage stage, string name) => stage.Parameters.Mask is not null && stage.Parameters.MaskedEvidence?.Contains(name) != false;

    private static ResponseTrace? TraceOf(Stage stage, string name, EvidenceFile file) => FrequencyResponseFile.Read(file.Bytes) is { IsGood: true, Data: { } response }
        ? new(CertificateBuilder.InWords(name), [.. AcousticCurves.AsJudged(stage, response).Select(p => new ResponsePoint(p.FrequencyHz, p.LevelDb))])
        : null;
}
