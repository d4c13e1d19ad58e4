using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Certificates;

/// <summary>
/// What was done to a unit, and to the parts that were in it then and are in it now, since its last certificate. A part that came in since
/// is told by its fitting alone: all of it is new.
/// </summary>
internal static class ChangesOfUnit
{
    public static IReadOnlyList<RevisionChange> Rows(CertificateFacts facts, IReadOnlyList<Dossier> parts, WorkshopCalendar calendar)
    {
        if (facts.Unit.Of<Certificate>().LastOrDefault()?.RecordedAt is not { } since)
        {
            return [];
        }

        var then = ThenInside(facts.Unit, since, facts.Inside).Append(facts.Unit.Part.Id).ToHashSet();
        return
        [
            .. parts
                .Where(p => then.Contains(p.Part.Id))
                .SelectMany(p => Of(p, since, facts))
                .OrderBy(c => c.Fact.RecordedAt)
                .ThenBy(c => c.Fact.Id)
                .Select(c => new RevisionChange(
                    c.Serial,
                    calendar.Local(c.Fact.OccurredAt),
                    c.What,
                    c.Why,
                    facts.NameOf(c.Fact),
                    c.Values ?? []
                )),
        ];
    }

    private static IEnumerable<Guid> ThenInside(Dossier part, DateTimeOffset since, IReadOnlyDictionary<Guid, Dossier> inside) =>
        part.AsOf(since)
            .PresentFittings.Values.Select(f => f.ChildId)
            .OfType<Guid>()
            .SelectMany(id => inside.TryGetValue(id, out var child) ? ThenInside(child, since, inside).Append(id) : []);

    private static IEnumerable<Change> Of(Dossier part, DateTimeOffset since, CertificateFacts facts) =>
        part
            .Facts.Where(f => f.RecordedAt > since)
            .Select(f =>
                f switch
                {
                    Disposition d => new Change(d, part.Part.Serial, Decided(part, d), d.Reason),
                    Removal r => Moved(part, part.Of<Fitting>().First(f => f.Id == r.FittingId), facts) is var (label, item)
                        ? new(r, part.Part.Serial, CertificateTexts.TakenOut(label, item), r.Reason)
                        : null,
                    Fitting fitted => Moved(part, fitted, facts) is var (label, item)
                        ? new(fitted, part.Part.Serial, CertificateTexts.Fitted(label, item), null)
                        : null,
                    Correction c => Corrected(part, c),
                    UnitReturn back => new(back, part.Part.Serial, CertificateTexts.CameBack(back.Complaint), null),
                    ReturnOutcome o => new(
                        o,
                        part.Part.Serial,
                        CertificateTexts.CameOutAs(NonconformitiesOfUnit.InWords(o.Kind)),
                        o.Reason
                    ),
                    AttemptEnding { Abandoned: false } e => DoneAgain(part, e, since),
                    _ => null,
                }
            )
            .OfType<Change>();

    private static string Decided(Dossier part, Disposition d)
    {
        var (what, decision) = (
            NonconformitiesOfUnit.Described(part, part.Of<Nonconformity>().First(n => n.Id == d.NonconformityId)),
            NonconformitiesOfUnit.InWords(d.Kind)
        );
        return d.LimitedTo is null
            ? CertificateTexts.Decided(what, decision)
            : CertificateTexts.DecidedWithLimit(what, decision, d.LimitedTo);
    }

    private static (string Label, string Item) Moved(Dossier part, Fitting fitting, CertificateFacts facts) =>
        (
            part.Route.Stages.Select(s => s.Slot(fitting.Position)?.Label).FirstOrDefault(l => l is not null) ?? fitting.Position,
            fitting.LotId is not null && !facts.Shown.LotNumbers
                ? CertificateTexts.ALot
                : facts.ItemNames.GetValueOrDefault(fitting.ItemId, CertificateTexts.UnknownItem)
        );

    /// <summary>Values that were computed anew after a correction are corrections too, with their own reason.</summary>
    private static Change? Corrected(Dossier part, Correction c)
    {
        var attempt = part.Attempts.First(a => a.Readings.Any(r => r.Reading.Id == c.ReadingId));
        var reading = attempt.Readings.First(r => r.Reading.Id == c.ReadingId);
        var before = reading.Corrections.TakeWhile(x => x.Id != c.Id).Select(x => x.Digits).Prepend(reading.Reading.Digits).Last();
        return new(
            c,
            part.Part.Serial,
            CertificateTexts.Corrected(
                MeasurementsOfUnit.LabelOf(part, reading),
                MeasurementsOfUnit.WithUnit(c.Digits, reading.Reading.Unit),
                before
            ),
            c.Reason
        );
    }

    /// <summary>Attempts that do not count are told by what was decided on them.</summary>
    private static Change? DoneAgain(Dossier part, AttemptEnding ending, DateTimeOffset since)
    {
        var attempt = part.Attempts.First(a => a.Id == ending.AttemptId);
        if (part.Route.Find(attempt.Stage) is not { } stage || part.CountingPass(stage.Code)?.Id != attempt.Id)
        {
            return null;
        }

        var before = part.AsOf(since).CountingPass(stage.Code);
        return new(
            ending,
            part.Part.Serial,
            before is null ? CertificateTexts.Done(stage.Title) : CertificateTexts.DoneAgain(stage.Title),
            null,
            before is null ? [] : [.. Changed(stage, before, attempt)]
        );
    }

    private static IEnumerable<ChangedValue> Changed(Stage stage, AttemptView before, AttemptView now) =>
        from c in stage.Characteristics
        where c.OnCertificate
        let was = before.Reading(c.Name)?.Digits
        let isNow = now.Reading(c.Name)?.Digits
        where was != isNow
        select new ChangedValue(c.Label, MeasurementsOfUnit.SymbolOf(c.Unit), was, isNow);

    private sealed record Change(Fact Fact, string Serial, string What, string? Why, IReadOnlyList<ChangedValue>? Values = null);
}
