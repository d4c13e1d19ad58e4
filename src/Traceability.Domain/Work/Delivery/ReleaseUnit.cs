using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.Delivery;

/// <summary>What stands between a unit and its certificate, and between its certificate and the door.</summary>
public static class ReleaseUnit
{
    /// <summary>Everything that is missing for a certificate; empty when it may be issued.</summary>
    public static IReadOnlyList<GateCheck> MissingForCertificate(Dossier dossier)
    {
        var question = new GateQuestion(
            dossier,
            dossier.Route.Stages[^1],
            new GateContext(dossier.Part.OccurredAt, Values.WorkshopCalendar.Utc)
        );
        var unfinished = dossier.Route.Stages.Where(s => !dossier.IsPassed(s.Code)).Select(s => s.Title).ToList();
        GateCheck[] checks =
        [
            new(
                "kind",
                dossier.Part.Kind == PartKinds.Unit,
                RefusalTexts.IsA(dossier.Part.Serial, dossier.Part.Kind),
                RefusalTexts.CertificatesAreIssuedForFinishedUnits
            ),
            unfinished.Count == 0
                ? new("stages", true, RefusalTexts.EveryStageIsPassed)
                : new("stages", false, RefusalTexts.NotPassed(string.Join(", ", unfinished)), RefusalTexts.NextIs(unfinished[0])),
            new(
                "scrapped",
                !dossier.Scrapped,
                dossier.Scrapped ? RefusalTexts.ItWasScrapped : RefusalTexts.ItIsNotScrapped,
                RefusalTexts.NothingTakeAnotherUnit
            ),
            dossier.OpenHolds().FirstOrDefault() is { } hold
                ? new("hold", false, RefusalTexts.OnHold(hold.Reason), RefusalTexts.LiftTheHold)
                : new("hold", true, RefusalTexts.ItIsNotOnHold),
            Gates.Rules.NoOpenNonconformity.Check(question),
            Gates.Rules.NoHoldInside.Check(question),
            Gates.Rules.LotsInsideReleased.Check(question),
            Gates.Rules.InstrumentInDoubt.Check(question),
            .. SinceItCameBack(dossier),
        ];
        return [.. checks.Where(c => !c.Met)];
    }

    /// <summary>
    /// Sends a certified unit out. <paramref name="lastWorkInside"/>: when the last work on anything fitted in it was recorded.
    /// </summary>
    public static Decision<Shipment> Ship(Dossier dossier, DateTimeOffset? lastWorkInside, string? customerReference, Stamp stamp)
    {
        if (dossier.Shipped is { } gone)
        {
            return Refusal.Conflict(RefusalTexts.LeftTheWorkshopAtAlready(dossier.Part.Serial, gone.OccurredAt), RefusalCode.AlreadyDone);
        }

        var missing = MissingForShipping(dossier);
        if (missing.Count > 0)
        {
            return new Refusal(
                RefusalKind.Conflict,
                RefusalTexts.MayNotBeShipped(dossier.Part.Serial, string.Join("; ", missing.Select(m => m.Because))),
                missing,
                new Dictionary<string, string[]>()
            );
        }

        if (!CertifiedSinceItCameBack(dossier))
        {
            return Refusal.Conflict(RefusalTexts.HasNoCertificateSinceItCameBack(dossier.Part.Serial), RefusalCode.CertificateMissing);
        }

        if (!HasCurrentCertificate(dossier, lastWorkInside))
        {
            return Refusal.Conflict(RefusalTexts.HasNoPresentBirthCertificate(dossier.Part.Serial), RefusalCode.CertificateMissing);
        }

        var shipment = new Shipment(stamp.NewId(), dossier.Part.Id, customerReference, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        return Decision.Accept(shipment, [shipment]);
    }

    /// <summary>
    /// Everything that is missing for the door, the certificate itself apart: what a certificate asks for, and that no return of the unit
    /// is open.
    /// </summary>
    public static IReadOnlyList<GateCheck> MissingForShipping(Dossier dossier)
    {
        var missing = MissingForCertificate(dossier);
        return BackAgain.Now(dossier) is { Closing: null }
            ? [.. missing, new("return-closed", false, RefusalTexts.ItsReturnIsOpen, RefusalTexts.ServiceDeskClosesTheReturn)]
            : missing;
    }

    /// <summary>
    /// True when the unit never came back, or when its latest certificate was issued after it did and after somebody said how that came
    /// out: what a customer is handed says what the unit is now.
    /// </summary>
    public static bool CertifiedSinceItCameBack(Dossier dossier) =>
        BackAgain.Now(dossier) is not { } back
        || dossier.Of<Certificate>().LastOrDefault()?.RecordedAt > (back.Outcome?.RecordedAt ?? back.Return.RecordedAt);

    /// <summary>
    /// What a certificate asks of a unit that came back: how that came out and, when it was repaired, that something was tested since.
    /// </summary>
    private static IEnumerable<GateCheck> SinceItCameBack(Dossier dossier)
    {
        if (BackAgain.Now(dossier) is not { } back)
        {
            yield break;
        }

        yield return ReturnedUnit.OutcomeOf(back);
        if (back.Outcome is { Kind: ReturnOutcomeKind.Repaired })
        {
            yield return dossier.Attempts.Any(a => a.Passed && a.Ending!.RecordedAt > back.Return.RecordedAt)
                ? new("return-test", true, RefusalTexts.WasTestedSinceItCameBack)
                : new("return-test", false, RefusalTexts.WasRepairedAndNotTested, RefusalTexts.ReworkOpensTheStagesAgain);
        }
    }

    /// <summary>True when there is a certificate that speaks of the unit as it is now.</summary>
    public static bool HasCurrentCertificate(Dossier dossier, DateTimeOffset? lastWorkInside) =>
        dossier.Of<Certificate>().LastOrDefault() is { } certificate
        && CurrencyOf(dossier, certificate, lastWorkInside) == CertificateCurrency.Current;

    /// <summary>
    /// What has become of a certificate since it was issued: the one judgement of the workshop's page, of the page that is open to
    /// everybody, and of what may be shipped on it. A hold does not end it: it says what was measured, and nothing about that has changed.
    /// </summary>
    /// <param name="dossier">The unit.</param>
    /// <param name="certificate">One of its certificates.</param>
    /// <param name="lastWorkInside">When the last work on anything fitted in it was recorded.</param>
    public static CertificateCurrency CurrencyOf(Dossier dossier, Certificate certificate, DateTimeOffset? lastWorkInside) =>
        dossier.Of<Certificate>().Last().Id != certificate.Id ? CertificateCurrency.Replaced
        : dossier.Scrapped ? CertificateCurrency.Scrapped
        : !CertifiedSinceItCameBack(dossier) ? CertificateCurrency.CameBack
        : lastWorkInside > certificate.RecordedAt
        || dossier.Facts.Any(f => f is AttemptEnding or Removal or Correction or Disposition && f.RecordedAt > certificate.RecordedAt)
            ? CertificateCurrency.WorkedOn
        : CertificateCurrency.Current;
}

/// <summary>What has become of a certificate since it was issued.</summary>
public enum CertificateCurrency
{
    /// <summary>It speaks of the unit as it is now.</summary>
    Current,

    /// <summary>A later revision was issued.</summary>
    Replaced,

    /// <summary>The unit was scrapped.</summary>
    Scrapped,

    /// <summary>The unit came back from a customer.</summary>
    CameBack,

    /// <summary>The unit, or something in it, was worked on.</summary>
    WorkedOn,
}
