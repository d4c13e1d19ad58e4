using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Certificates;

/// <summary>
/// Makes the certificate of a finished unit from its facts. Pure: the same facts and issue give the same document. That the unit may
/// have one at all is for <see cref="Work.Delivery.ReleaseUnit.MissingForCertificate"/> to say first.
/// </summary>
public static class CertificateBuilder
{
    /// <summary>The document.</summary>
    public static CertificateDocument Build(CertificateFacts recorded, CertificateIssue issue)
    {
        var facts = recorded with { Shown = issue.Workshop.Shown, Names = issue.Workshop.Names };
        var calendar = issue.Calendar;
        var parts = facts.InOrderOfWork();
        var signatures = SignaturesOfUnit.Rows(facts, parts, calendar).ToList();
        return new CertificateDocument
        {
            CertificateId = issue.CertificateId,
            Serial = facts.Unit.Part.Serial,
            Revision = issue.Revision,
            IssuedAt = calendar.Local(issue.IssuedAt),
            Supersedes = issue.Supersedes,
            VerifyAddress = issue.VerifyAddress,
            WorkshopName = issue.Workshop.Name,
            WorkshopRevision = issue.Workshop.Revision,
            WorkshopAddress = issue.Workshop.Address,
            WorkshopContact = issue.Workshop.Contact,
            LogoSha256 = issue.Workshop.LogoSha256,
            TimeZone = issue.Workshop.TimeZone,
            InventedDataNotice = issue.InventedDataNotice,
            Identity = IdentityOf(facts, parts, issue),
            Changes = ChangesOfUnit.Rows(facts, parts, calendar),
            Contents = ContentsOfUnit.Rows(facts),
            Measurements = MeasurementsOfUnit.Stages(facts, parts, calendar),
            Patterns = PatternsOfUnit.Results(facts, calendar),
            Curves = CurvesOfUnit.Pictures(facts, parts, calendar),
            Soaks = SoaksOfUnit.Pictures(facts, parts, calendar),
            Instruments = InstrumentsOfUnit.Rows(facts, parts, calendar),
            BuiltBy = signatures[..^1],
            ReleasedBy = signatures[^1],
            Nonconformities = NonconformitiesOfUnit.Rows(facts, parts, calendar),
            Statements = [.. StatementsOfUnit.Rows(parts, issue.Workshop), .. SingleHandedWorkOnUnit.Statements(facts, parts, calendar)],
            Scope = CertificateTexts.Scope,
        };
    }

    private static UnitIdentity IdentityOf(CertificateFacts facts, IReadOnlyList<Dossier> parts, CertificateIssue issue)
    {
        var regrade = facts.Unit.Of<Disposition>().LastOrDefault(d => d.Kind == DispositionKind.Regrade);
        var last = facts.Unit.CountingPass(facts.Unit.Route.Stages[^1].Code)!;
        return new(
            facts.Unit.Part.Serial,
            facts.Unit.Part.Model,
            facts.Unit.Route.Title,
            regrade?.LimitedTo,
            regrade?.Reason,
            [.. parts.Reverse().Select(p => RouteOf(p.Route)).Distinct()],
            issue.Calendar.Local(parts.SelectMany(p => p.Facts).Min(f => f.OccurredAt)),
            issue.Calendar.Local(last.Ending!.OccurredAt)
        );
    }

    private static CertifiedRoute RouteOf(Route route) =>
        new(route.Kind, $"{route.Model}/{route.Kind}", route.Revision) { Title = route.Title, Model = route.Model };
}
