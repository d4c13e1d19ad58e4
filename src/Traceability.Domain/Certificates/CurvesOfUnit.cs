using Traceability.Domain.Gates;
using Traceability.Domain.Values;

namespace Traceability.Domain.Certificates;

/// <summary>The responses of a unit and of what is in it, the unit's first.</summary>
internal static class CurvesOfUnit
{
    public static IReadOnlyList<CertifiedCurve> Pictures(CertificateFacts facts, IReadOnlyList<Dossier> parts, WorkshopCalendar calendar) =>
        [
            .. from part in parts.Reverse()
            from stage in part.Route.Stages
            let pass = part.CountingPass(stage.Code)
            where pass is not null
            let files = CertificateFacts.DrawnFilesOf(part, stage).Where(e => facts.Files.ContainsKey(e.Id)).Select(e => facts.Files[e.Id])
            from picture in ResponsesOfStage.Pictures(stage, part.Part.Serial, files, calendar.SayWithZone(pass.Ending!.OccurredAt))
            select picture,
        ];
}
