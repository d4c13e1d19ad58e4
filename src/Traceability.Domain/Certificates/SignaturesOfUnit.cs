using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Certificates;

/// <summary>Who closed which stage of a unit and of what is in it, in the roles that the person held when it was recorded.</summary>
internal static class SignaturesOfUnit
{
    /// <summary>One for every stage whose pass counts, in the order of the work.</summary>
    public static IReadOnlyList<StageSignature> Rows(CertificateFacts facts, IReadOnlyList<Dossier> parts, WorkshopCalendar calendar) =>
        [
            .. from part in parts
            from stage in part.Route.Stages
            let ending = part.CountingPass(stage.Code)?.Ending
            where ending is not null
            select new StageSignature(
                part.Part.Serial,
                stage.Title,
                facts.NameOf(ending),
                RolesOf(ending.By, ending.RecordedAt, facts.RoleGrants),
                calendar.Local(ending.OccurredAt)
            ),
        ];

    /// <summary>
    /// The roles that a person held at a moment of recording, in words: what was given or taken later does not change who signed.
    /// </summary>
    public static string RolesOf(Guid person, DateTimeOffset recordedAt, IEnumerable<RoleGrant> grants)
    {
        var held = grants
            .Where(g => g.PersonId == person && g.RecordedAt <= recordedAt)
            .OrderBy(g => g.RecordedAt)
            .GroupBy(g => g.Role)
            .Where(g => g.Last().Given)
            .Select(g => g.Key)
            .Order()
            .Select(InWords)
            .ToList();
        return held.Count == 0 ? CertificateTexts.RoleWasNotRecorded : string.Join(", ", held);
    }

    private static string InWords(Role role) =>
        role switch
        {
            Role.Builder => CertificateTexts.Builder,
            Role.Quality => CertificateTexts.QualityLead,
            Role.Service => CertificateTexts.ServiceDesk,
            Role.Lead => CertificateTexts.WorkshopLead,
            Role.Importer => CertificateTexts.Importer,
            Role.Instrument => CertificateTexts.Instrument,
            _ => throw new ArgumentOutOfRangeException(nameof(role)),
        };
}
