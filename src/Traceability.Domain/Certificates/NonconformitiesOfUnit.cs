using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Certificates;

/// <summary>
/// The decided nonconformities of a unit and of what is in it, in the words of the route; and that it went back to its owner unrepaired.
/// </summary>
internal static class NonconformitiesOfUnit
{
    public static IReadOnlyList<CarriedNonconformity> Rows(
        CertificateFacts facts,
        IReadOnlyList<Dossier> parts,
        WorkshopCalendar calendar
    ) => [.. parts.SelectMany(p => Of(p, facts, calendar)).Concat(SentBackUnrepaired(facts, calendar)).OrderBy(n => n.RaisedAt)];

    /// <summary>What did not conform, with labels and symbols in the place of codes.</summary>
    public static string Described(Dossier part, Nonconformity n) => PlainWords.Of(part.Route, n.Stage, n.Description);

    /// <summary>A decision in a word.</summary>
    public static string InWords(DispositionKind kind) =>
        kind switch
        {
            DispositionKind.Rework => CertificateTexts.Rework,
            DispositionKind.Repair => CertificateTexts.Repair,
            DispositionKind.Concession => CertificateTexts.Concession,
            DispositionKind.Regrade => CertificateTexts.Regrade,
            DispositionKind.Scrap => CertificateTexts.Scrap,
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };

    /// <summary>How a return came out, in a word.</summary>
    public static string InWords(ReturnOutcomeKind kind) =>
        kind switch
        {
            ReturnOutcomeKind.Repaired => CertificateTexts.Repaired,
            ReturnOutcomeKind.NoFault => CertificateTexts.NoFaultFound,
            ReturnOutcomeKind.Scrapped => CertificateTexts.Scrap,
            ReturnOutcomeKind.Unrepaired => CertificateTexts.Unrepaired,
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };

    private static IEnumerable<CarriedNonconformity> Of(Dossier part, CertificateFacts facts, WorkshopCalendar calendar) =>
        from n in part.Of<Nonconformity>()
        let d = part.Of<Disposition>().FirstOrDefault(d => d.NonconformityId == n.Id)
        where d is not null && (facts.Shown.Reworks || !IsPutRight(d.Kind))
        select new CarriedNonconformity(
            part.Part.Serial,
            n.Stage is null ? null : part.Route.Find(n.Stage)?.Title ?? n.Stage,
            calendar.Local(n.OccurredAt),
            Described(part, n),
            InWords(d.Kind),
            d.Reason,
            facts.NameOf(d),
            calendar.Local(d.OccurredAt),
            LimitsOf(part, n, d)
        );

    /// <summary>
    /// What was put right bears no longer on the unit; what stays as it is, or as less, is told in any case.
    /// </summary>
    private static bool IsPutRight(DispositionKind kind) => kind is DispositionKind.Rework or DispositionKind.Repair;

    /// <summary>
    /// A unit that came back and goes out as it came says so for good, with what the customer complained of and what was found.
    /// </summary>
    private static IEnumerable<CarriedNonconformity> SentBackUnrepaired(CertificateFacts facts, WorkshopCalendar calendar) =>
        from back in facts.Unit.Of<UnitReturn>()
        let outcome = facts.Unit.Of<ReturnOutcome>().LastOrDefault(o => o.ReturnId == back.Id)
        where outcome is { Kind: ReturnOutcomeKind.Unrepaired }
        let found = facts.Unit.Of<ReturnFinding>().Where(f => f.ReturnId == back.Id).Select(f => f.Description)
        select new CarriedNonconformity(
            facts.Unit.Part.Serial,
            null,
            calendar.Local(back.OccurredAt),
            CertificateTexts.CameBackAndWasFound(back.Complaint, string.Join("; ", found)),
            InWords(outcome.Kind),
            CertificateTexts.AtTheCustomersWish(outcome.Reason),
            facts.NameOf(outcome),
            calendar.Local(outcome.OccurredAt),
            null
        );

    private static string? LimitsOf(Dossier part, Nonconformity n, Disposition d)
    {
        var missed = d.Kind is DispositionKind.Concession or DispositionKind.Regrade
            ? part.Attempts.FirstOrDefault(a => a.Id == n.AttemptId)
                ?.Readings.Where(r => !r.Met)
                .Select(r => MeasurementsOfUnit.Missed(part, r))
                ?? []
            : [];
        var words = missed.Concat(d.LimitedTo is null ? [] : [CertificateTexts.LimitedTo(d.LimitedTo)]).ToList();
        return words.Count == 0 ? null : string.Join("; ", words);
    }
}
