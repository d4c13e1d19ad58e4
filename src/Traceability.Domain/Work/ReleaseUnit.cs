using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work;

/// <summary>What stands between a unit and its certificate, and between its certificate and the door.</summary>
public static class ReleaseUnit
{
    /// <summary>Everything that is missing for a certificate; empty when it may be issued.</summary>
    public static IReadOnlyList<GateCheck> MissingForCertificate(Dossier dossier)
    {
        var question = new GateQuestion(dossier, dossier.Route.Stages[^1], new GateContext(dossier.Part.OccurredAt, Values.WorkshopCalendar.Utc));
        var unfinished = dossier.Route.Stages.Where(s => !dossier.IsPassed(s.Code)).Select(s => s.Title).ToList();
        GateCheck[] checks =
        [
            new("kind", dossier.Part.Kind == PartKinds.Unit, $"{dossier.Part.Serial} is a {dossier.Part.Kind}", "certificates are issued for finished units"),
            unfinished.Count == 0 ? new("stages", true, "every stage is passed") : new("stages", false, $"not passed: {string.Join(", ", unfinished)}", $"next is {unfinished[0]}"),
            new("scrapped", !dossier.Scrapped, dossier.Scrapped ? "it was scrapped" : "it is not scrapped", "nothing: take another unit"),
            dossier.OpenHolds().FirstOrDefault() is { } hold ? new("hold", false, $"on hold: {hold.Reason}", "lift the hold") : new("hold", true, "it is not on hold"),
            Gates.Rules.NoOpenNonconformity.Check(question), Gates.Rules.NoHoldInside.Check(question), Gates.Rules.LotsInsideReleased.Check(question),
        ];
        return [.. checks.Where(c => !c.Met)];
    }

    /// <summary>Sends a certified unit out. <paramref name="lastWorkInside"/>: when the last work on anything fitted in it was recorded.</summary>
    public static Decision<Shipment> Ship(Dossier dossier, DateTimeOffset? lastWorkInside, string? customerReference, Stamp stamp)
    {
        if (dossier.Shipped is { } gone)
        {
            return Refusal.Conflict($"{dossier.Part.Serial} left the workshop at {gone.OccurredAt:u} already");
        }

        var missing = MissingForCertificate(dossier);
        if (missing.Count > 0)
        {
            return new Refusal(RefusalKind.Conflict, $"{dossier.Part.Serial} may not be shipped: {string.Join("; ", missing.Select(m => m.Because))}", missing, new Dictionary<string, string[]>());
        }

        if (!HasCurrentCertificate(dossier, lastWorkInside))
        {
            return Refusal.Conflict($"{dossier.Part.Serial} has no birth certificate for its present state; issue one first");
        }

        var shipment = new Shipment(stamp.NewId(), dossier.Part.Id, customerReference, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        return Decision.Accept(shipment, [shipment]);
    }

    /// <summary>True when the latest certificate was issued after the last work on the unit and on everything that is fitted in it.</summary>
    public static bool HasCurrentCertificate(Dossier dossier, DateTimeOffset? lastWorkInside) =>
        dossier.Of<Certificate>().LastOrDefault() is { } certificate
        && !(lastWorkInside > certificate.RecordedAt)
        && dossier.Facts.Where(f => f is AttemptEnding or Removal or Correction or Disposition).All(f => f.RecordedAt <= certificate.RecordedAt);
}
