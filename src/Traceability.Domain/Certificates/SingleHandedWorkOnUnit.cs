using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Certificates;

/// <summary>
/// Where one person did what two should: the certificate says it, with the reason, whatever else the workshop shows.
/// </summary>
internal static class SingleHandedWorkOnUnit
{
    public static IEnumerable<Statement> Statements(CertificateFacts facts, IReadOnlyList<Dossier> parts, WorkshopCalendar calendar) =>
        from part in parts
        from signed in part.Of<SecondSignIn>()
        where StillBears(part, signed)
        orderby signed.RecordedAt
        select new Statement(
            CertificateTexts.SingleHanded,
            CertificateTexts.SignedInASecondTime(
                part.Part.Serial,
                What(part, signed),
                facts.NameOf(signed),
                calendar.SayWithZone(signed.OccurredAt),
                signed.Reason
            )
        );

    /// <summary>
    /// A sign-in for a stage counts where its attempt does: signed and then done by another, or done anew, it says nothing.
    /// </summary>
    private static bool StillBears(Dossier part, SecondSignIn signed) =>
        signed.Stage is not { } stage
        || signed.Rule != SecondPerson.OfStage
        || part.CountingPass(stage) is { } pass
            && pass.Attempt.RecordedAt > signed.RecordedAt
            && pass.WorkedOnBy(signed.By)
            && !part.Attempts.Any(a =>
                a.Stage == stage
                && a.Id != pass.Id
                && a.Ending?.RecordedAt > signed.RecordedAt
                && a.Ending.RecordedAt < pass.Attempt.RecordedAt
            );

    private static string What(Dossier part, SecondSignIn signed) =>
        signed.Rule switch
        {
            SecondPerson.OfConcession => CertificateTexts.ConcessionOnOwnWork,
            SecondPerson.OfDoubt => CertificateTexts.DoubtOnOwnWork,
            _ => CertificateTexts.StageAfterOwnWork(part.Route.Find(signed.Stage ?? "")?.Title ?? signed.Stage ?? ""),
        };
}
