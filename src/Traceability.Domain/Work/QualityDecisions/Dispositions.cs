using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.QualityDecisions;

/// <summary>The quality lead decides on a nonconformity.</summary>
public static class Dispositions
{
    /// <summary>Leads to the disposition and, for a scrapped part, to a free carrier.</summary>
    public static Decision<Disposition> Decide(
        Dossier dossier,
        Guid nonconformityId,
        DispositionKind kind,
        string? returnTo,
        string? limitedTo,
        string reason,
        Actor actor,
        Stamp stamp,
        PermitUse? permit = null
    )
    {
        var n = dossier.Of<Nonconformity>().FirstOrDefault(x => x.Id == nonconformityId);
        if (n is null)
        {
            return Refusal.NotFound(RefusalTexts.HasNoNonconformity(dossier.Part.Serial, nonconformityId));
        }

        if (Problem(dossier, n, kind, ref returnTo, reason, actor) is { } problem)
        {
            return problem;
        }

        if (
            permit is not null
            && (
                kind == DispositionKind.Concession
                    ? permit.ProblemWith(n)
                    : Refusal.Invalid("permit", RefusalTexts.OnlyAConcessionRestsOnAPermit)
            )
                is { } uncovered
        )
        {
            return uncovered;
        }

        if (Timing.OutOfOrder(dossier, stamp.OccurredAt) is { } outOfOrder)
        {
            return outOfOrder;
        }

        var disposition = new Disposition(
            stamp.NewId(),
            dossier.Part.Id,
            n.Id,
            kind,
            returnTo,
            permit is null ? limitedTo : $"{permit.Standing.Permit.Number}: {permit.Standing.Limits}",
            reason,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        )
        {
            PermitId = permit?.Standing.Permit.Id,
        };
        List<Fact> facts = [disposition];
        if (kind == DispositionKind.Scrap && dossier.Around.CarrierCode is { } carrier)
        {
            facts.Add(new CarrierRelease(stamp.NewId(), dossier.Part.Id, carrier, stamp.By, stamp.OccurredAt, stamp.RecordedAt));
        }

        if (NeedOf(dossier, kind, actor) == SecondPersonNeed.Alone)
        {
            facts.Add(SecondPerson.SignedBy(actor, SecondPerson.OfConcession, dossier.Part.Id, n.Id, n.Stage, stamp));
        }

        return Decision.Accept(disposition, facts);
    }

    /// <summary>Whether this decision needs a second person: who built a part does not concede on it.</summary>
    public static SecondPersonNeed NeedOf(Dossier dossier, DispositionKind kind, Actor actor) =>
        SecondPerson.Of(actor, kind == DispositionKind.Concession && BuiltBy(dossier, actor));

    private static Refusal? Problem(
        Dossier dossier,
        Nonconformity n,
        DispositionKind kind,
        ref string? returnTo,
        string reason,
        Actor actor
    )
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", RefusalTexts.SayWhyThisWasDecided);
        }

        if (dossier.OpenNonconformities().All(o => o.Id != n.Id))
        {
            return Refusal.Conflict(RefusalTexts.NonconformityIsDecidedAlready, RefusalCode.AlreadyDone);
        }

        if (dossier.OpenAttempt is { } open)
        {
            return Refusal.Conflict(RefusalTexts.AttemptIsOpenAt(dossier.Part.Serial, open.Attempt.Station), RefusalCode.AttemptOpen);
        }

        if (
            AloneRefusals.Of(
                NeedOf(dossier, kind, actor),
                () => RefusalTexts.BuilderMayNotConcede(actor.Name, dossier.Part.Serial),
                RefusalCode.BuilderMayNotDecide
            ) is
            { } alone
        )
        {
            return alone;
        }

        if (kind is not (DispositionKind.Concession or DispositionKind.Regrade) && dossier.Around.FittedInSerial is { } parent)
        {
            return Refusal.Conflict(RefusalTexts.IsFittedInTakeItOutFirst(dossier.Part.Serial, parent), RefusalCode.PartIsFitted);
        }

        if (kind is not (DispositionKind.Rework or DispositionKind.Repair))
        {
            return returnTo is null ? null : Refusal.Invalid("returnTo", RefusalTexts.OnlyReworkAndRepairReturnToAStage);
        }

        returnTo ??= n.Stage is { } failed ? dossier.Route.Find(failed)?.ReworkReturnsTo ?? failed : null;
        return ReturnProblem(dossier, n, returnTo);
    }

    private static Refusal? ReturnProblem(Dossier dossier, Nonconformity n, string? returnTo)
    {
        if (returnTo is null || dossier.Route.Find(returnTo) is null)
        {
            return Refusal.Invalid(
                "returnTo",
                RefusalTexts.SayWhichStageItReturnsTo(string.Join(", ", dossier.Route.Stages.Select(s => s.Code)))
            );
        }

        if (n.Stage is { } failed && failed != returnTo && dossier.Route.IsAtOrAfter(returnTo, failed))
        {
            return Refusal.Invalid("returnTo", RefusalTexts.CannotReturnToALaterStage(TitleOf(returnTo), TitleOf(failed)));
        }

        var spent = dossier.Route.Stages.FirstOrDefault(s =>
            dossier.Route.IsAtOrAfter(s.Code, returnTo) && AttemptsLeft.NoneLeft(dossier, s)
        );
        return spent is null ? null : Refusal.Conflict(RefusalTexts.NoAttemptLeftToDoAgain(spent.Title));

        string? TitleOf(string stage) => dossier.Route.Find(stage)?.Title;
    }

    internal static bool BuiltBy(Dossier dossier, Actor actor) => dossier.Attempts.Any(a => a.WorkedOnBy(actor.PersonId));
}
