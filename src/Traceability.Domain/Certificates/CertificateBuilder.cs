using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Certificates;

/// <summary>
/// Makes the certificate of a finished unit from its facts. Pure: the same facts and issue give the same document. That the unit may
/// have one at all is for <see cref="Work.ReleaseUnit.MissingForCertificate"/> to say first.
/// </summary>
public static class CertificateBuilder
{
    /// <summary>The document.</summary>
    public static CertificateDocument Build(CertificateFacts facts, CertificateIssue issue)
    {
        var calendar = issue.Calendar;
        var parts = facts.InOrderOfWork();
        var signatures = parts.SelectMany(p => SignaturesOf(p, facts, calendar)).ToList();
        return new CertificateDocument
        {
            CertificateId = issue.CertificateId,
            Serial = facts.Unit.Part.Serial,
            Revision = issue.Revision,
            IssuedAt = calendar.Local(issue.IssuedAt),
            Supersedes = issue.Supersedes,
            VerifyAddress = issue.VerifyAddress,
            WorkshopName = issue.WorkshopName,
            InventedDataNotice = issue.InventedDataNotice,
            Identity = IdentityOf(facts, parts, issue),
            Contents = ContentsOfUnit.Rows(facts),
            Measurements = MeasurementsOfUnit.Stages(facts, parts, calendar),
            Patterns = PatternsOfUnit.Results(facts, calendar),
            Curves = CurvesOfUnit.Pictures(facts, parts, calendar),
            Soaks = SoaksOfUnit.Pictures(facts, parts, calendar),
            Instruments = InstrumentsOf(facts, parts),
            BuiltBy = signatures[..^1],
            ReleasedBy = signatures[^1] with { Role = "inspector" },
            Nonconformities = [.. parts.SelectMany(p => NonconformitiesOf(p, facts, calendar)).OrderBy(n => n.RaisedAt)],
            Statements = ReferenceStatements.Common,
        };
    }

    private static UnitIdentity IdentityOf(CertificateFacts facts, IReadOnlyList<Dossier> parts, CertificateIssue issue)
    {
        var regrade = facts.Unit.Of<Disposition>().LastOrDefault(d => d.Kind == DispositionKind.Regrade);
        var last = facts.Unit.CountingPass(facts.Unit.Route.Stages[^1].Code)!;
        return new(
            facts.Unit.Part.Serial, facts.Unit.Part.Model, facts.Unit.Route.Title, regrade?.LimitedTo, regrade?.Reason,
            [.. parts.Reverse().Select(p => new RouteRevision(p.Part.Kind, $"{p.Route.Model}/{p.Route.Kind}", p.Route.Revision)).Distinct()],
            issue.Calendar.Local(parts.SelectMany(p => p.Facts).Min(f => f.OccurredAt)), issue.Calendar.Local(last.Ending!.OccurredAt));
    }

    private static IReadOnlyList<InstrumentRow> InstrumentsOf(CertificateFacts facts, IReadOnlyList<Dossier> parts)
    {
        var calibrations = facts.Instruments.SelectMany(i => i.Calibrations).ToDictionary(c => c.Id);
        return
        [
            .. from part in parts
               from stage in part.Route.Stages
               from use in part.CountingPass(stage.Code)?.Instruments ?? []
               orderby use.InstrumentCode
               let calibration = use.CalibrationId is { } id ? calibrations.GetValueOrDefault(id) : null
               group calibration by (use.InstrumentCode, use.InstrumentKind, use.CalibrationId) into used
               let c = used.First()
               select new InstrumentRow(used.Key.InstrumentCode, InWords(used.Key.InstrumentKind), c?.CalibratedOn, c?.DueOn, c?.Reference),
        ];
    }

    private static IEnumerable<StageSignature> SignaturesOf(Dossier part, CertificateFacts facts, Values.WorkshopCalendar calendar) =>
        from stage in part.Route.Stages
        let pass = part.CountingPass(stage.Code)
        where pass is not null
        select new StageSignature(part.Part.Serial, stage.Title, facts.NameOf(pass.Ending!.By), "builder", calendar.Local(pass.Ending.OccurredAt));

    private static IEnumerable<CarriedNonconformity> NonconformitiesOf(Dossier part, CertificateFacts facts, Values.WorkshopCalendar calendar) =>
        from n in part.Of<Nonconformity>()
        let d = part.Of<Disposition>().FirstOrDefault(d => d.NonconformityId == n.Id)
        where d is not null
        select new CarriedNonconformity(
            part.Part.Serial, n.Stage is null ? null : part.Route.Find(n.Stage)?.Title ?? n.Stage, calendar.Local(n.OccurredAt), n.Description,
            d.Kind.ToString().ToLowerInvariant(), d.Reason, facts.NameOf(d.By), calendar.Local(d.OccurredAt), LimitsOf(part, n, d));

    private static string? LimitsOf(Dossier part, Nonconformity n, Disposition d)
    {
        var missed = d.Kind is DispositionKind.Concession or DispositionKind.Regrade
            ? part.Attempts.FirstOrDefault(a => a.Id == n.AttemptId)?.Readings.Where(r => !r.Met).Select(r => MeasurementsOfUnit.Missed(part, r)) ?? []
            : [];
        var words = missed.Concat(d.LimitedTo is null ? [] : [$"limited to: {d.LimitedTo}"]).ToList();
        return words.Count == 0 ? null : string.Join("; ", words);
    }

    /// <summary>A kind as people say it: "insulation-tester" is an insulation tester.</summary>
    internal static string InWords(string kind) => kind.Replace('-', ' ');
}
