using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.QualityDecisions;

/// <summary>What was decided on one part, and the facts that are the part's own.</summary>
public sealed record DecidedDoubt(Dossier Part, DoubtDecision Decision, IReadOnlyList<Fact> Facts);

/// <summary>The quality lead decides on what was measured on parts with an instrument in doubt.</summary>
public static class InstrumentDoubts
{
    /// <summary>
    /// Leads to one decision for each part, in the same order, or to none; the decision's own facts are empty, for they belong to the
    /// parts.
    /// </summary>
    public static Decision<IReadOnlyList<DecidedDoubt>> Decide(
        IReadOnlyList<Dossier> parts,
        Instrument instrument,
        DoubtDecisionKind kind,
        string reason,
        Actor actor,
        Stamp stamp
    )
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", RefusalTexts.SayWhyThisWasDecided);
        }

        return
            PartsRefused.From(parts.Select(p => (p.Part.Serial, Problem(p, instrument, kind, actor))), RefusalTexts.NothingWasDecided)
                is { } refusal
            ? refusal
            : Decision.Accept<IReadOnlyList<DecidedDoubt>>([
                .. parts.Select(p => Decided(p, instrument, kind, reason.Trim(), actor, stamp)),
            ]);
    }

    private static SecondPersonNeed Need(Dossier part, DoubtDecisionKind kind, Actor actor) =>
        SecondPerson.Of(actor, kind == DoubtDecisionKind.Accepted && Dispositions.BuiltBy(part, actor));

    private static Refusal? Problem(Dossier part, Instrument instrument, DoubtDecisionKind kind, Actor actor)
    {
        if (OwnDoubts(part, instrument).Count == 0)
        {
            var inside = part.Around.InDoubt.Where(d => d.Instrument == instrument.Code).Select(d => d.Serial).Distinct().ToList();
            return Refusal.Conflict(
                inside.Count == 0
                    ? RefusalTexts.NothingOnItIsInDoubt(instrument.Code)
                    : RefusalTexts.DecideOnWhatIsInside(string.Join(", ", inside), instrument.Code)
            );
        }

        return part.Scrapped
            ? Refusal.Conflict(RefusalTexts.WasScrappedAlready(part.Part.Serial))
            : kind switch
            {
                DoubtDecisionKind.Accepted => AloneRefusals.Of(
                    Need(part, kind, actor),
                    () => RefusalTexts.BuilderMayNotAccept(actor.Name, part.Part.Serial),
                    RefusalCode.NotAllowed
                ),
                DoubtDecisionKind.Held when part.Part.Kind == PartKinds.FilmLot => Refusal.Conflict(
                    RefusalTexts.LotIsHeldAsALot(part.Part.Serial)
                ),
                DoubtDecisionKind.Remeasure => CannotBeMeasuredAgain(part, instrument),
                _ => null,
            };
    }

    private static Refusal? CannotBeMeasuredAgain(Dossier part, Instrument instrument)
    {
        var serial = part.Part.Serial;
        return part.Shipped is not null ? Refusal.Conflict(RefusalTexts.IsInState(serial, Words.Of(part.State())))
            : part.Around.FittedInSerial is { } parent ? Refusal.Conflict(RefusalTexts.IsFittedInTakeItOutFirst(serial, parent))
            : part.OpenAttempt is { } open ? Refusal.Conflict(RefusalTexts.AttemptIsOpenAt(serial, open.Attempt.Station))
            : part.Route.Stages.FirstOrDefault(s =>
                part.Route.IsAtOrAfter(s.Code, ReturnTo(part, instrument)) && AttemptsLeft.NoneLeft(part, s)
            )
                is { } spent
                ? Refusal.Conflict(RefusalTexts.NoAttemptLeftToDoAgain(spent.Title))
            : null;
    }

    private static DecidedDoubt Decided(
        Dossier part,
        Instrument instrument,
        DoubtDecisionKind kind,
        string reason,
        Actor actor,
        Stamp stamp
    )
    {
        var decision = new DoubtDecision(
            stamp.NewId(),
            part.Part.Id,
            instrument.Id,
            kind,
            kind == DoubtDecisionKind.Remeasure ? ReturnTo(part, instrument) : null,
            reason,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return kind == DoubtDecisionKind.Held && part.OpenHolds().All(h => h.Reason != reason)
            ? new(
                part,
                decision,
                [decision, new Hold(stamp.NewId(), null, part.Part.Id, null, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt)]
            )
            : new(
                part,
                decision,
                Need(part, kind, actor) == SecondPersonNeed.Alone
                    ? [decision, SecondPerson.SignedBy(actor, SecondPerson.OfDoubt, part.Part.Id, instrument.Id, null, stamp)]
                    : [decision]
            );
    }

    /// <summary>The first stage of its route that was measured in doubt.</summary>
    private static string ReturnTo(Dossier part, Instrument instrument)
    {
        var stages = OwnDoubts(part, instrument).Select(d => d.Stage).ToHashSet();
        return part.Route.Stages.First(s => stages.Contains(s.Code)).Code;
    }

    private static IReadOnlyList<InDoubt> OwnDoubts(Dossier part, Instrument instrument) =>
        [.. part.Around.InDoubt.Where(d => d.PartId == part.Part.Id && d.Instrument == instrument.Code)];
}
