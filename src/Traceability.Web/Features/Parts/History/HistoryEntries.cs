using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Parts.History;

/// <summary>The facts about one part in words: one entry for each.</summary>
internal sealed class HistoryEntries(Dossier dossier, HistoryNames names)
{
    private readonly Dictionary<Guid, AttemptView> attempts = dossier.Attempts.ToDictionary(a => a.Id);
    private readonly Dictionary<Guid, ReadingView> readings = dossier.Attempts.SelectMany(a => a.Readings).ToDictionary(r => r.Reading.Id);

    public HistoryEntry Of(Fact fact) =>
        fact switch
        {
            Part p => Entry(p, "registered", PartsSentences.RegisteredAs(p.Kind, p.Model, dossier.Route.Revision)),
            CarrierPlacement c => Entry(c, "laid-into-carrier", PartsSentences.LaidIntoCarrier(c.CarrierCode)) with
            {
                Item = c.CarrierCode,
            },
            CarrierRelease c => Entry(c, "left-carrier", PartsSentences.LeftCarrier(c.CarrierCode)) with { Item = c.CarrierCode },
            Attempt or InstrumentUse or Reading or Correction or EvidenceRecord or AttemptEnding => OfWork(fact),
            Fitting or Removal => OfFitting(fact),
            Nonconformity n => Entry(n, "nonconformity", n.Description) with { Stage = n.Stage, Attempt = n.AttemptId, Code = n.Code },
            Disposition d => Entry(d, "disposition", PartsSentences.Decided(Decided(d))) with
            {
                Code = d.Kind.ToString().ToLowerInvariant(),
                Stage = d.ReturnTo,
                Reason = d.Reason,
            },
            Hold h => Entry(h, "hold", PartsSentences.PutOnHold(h.Reason)) with { Reason = h.Reason },
            HoldRelease r => Entry(r, "hold-released", PartsSentences.HoldLifted(r.Reason)) with { Reason = r.Reason },
            Certificate c => Entry(c, "certificate", PartsSentences.BirthCertificateIssuedRevision(c.Revision)),
            Shipment s => Entry(
                s,
                "shipped",
                s.CustomerReference is null ? "shipped" : PartsSentences.ShippedReference(s.CustomerReference)
            ) with
            {
                Item = s.CustomerReference,
            },
            UnitReturn r => Entry(r, "returned", PartsSentences.CameBack(r.Complaint)) with
            {
                Item = r.CustomerReference,
                Reason = r.Complaint,
            },
            ReturnFinding f => Entry(f, "return-finding", PartsSentences.FoundDescription(f.Description)) with { Code = f.Code },
            DoubtDecision d => Entry(d, "doubt-decision", PartsSentences.DoubtDecided(d.Kind.ToString().ToLowerInvariant(), d.Reason)) with
            {
                Code = d.Kind.ToString().ToLowerInvariant(),
                Stage = d.ReturnTo,
                Reason = d.Reason,
            },
            ReturnOutcome o => Entry(o, "return-outcome", PartsSentences.ReturnCameOut(Words.Of(o.Kind), o.Reason)) with
            {
                Code = Words.Of(o.Kind),
                Reason = o.Reason,
            },
            SecondSignIn s => Entry(s, "second-sign-in", PartsSentences.SignedInASecondTime(RuleOf(s), s.Reason)) with
            {
                Code = s.Rule,
                Stage = s.Stage,
                Reason = s.Reason,
            },
            ReturnClosing c => Entry(c, "return-closed", PartsSentences.ReturnClosed(c.Action)),
            Lot l => Entry(l, "lot-received", PartsSentences.ReceivedFromTheirLot(l.Supplier, l.SupplierLot)) with { Item = l.SupplierLot },
            LotDecision d => Entry(
                d,
                d.State == LotState.Released ? "lot-released" : "lot-quarantined",
                d.State == LotState.Released ? PartsSentences.ReleasedReason(d.Reason) : PartsSentences.PutInQuarantine(d.Reason)
            ) with
            {
                Reason = d.Reason,
            },
            _ => Entry(fact, "noted", fact.GetType().Name),
        };

    private string RuleOf(SecondSignIn s) =>
        s.Rule switch
        {
            SecondPerson.OfConcession => PartsSentences.ConcessionOnOwnWork,
            SecondPerson.OfDoubt => PartsSentences.DoubtOnOwnWork,
            _ => PartsSentences.StageAfterOwnWork(Title(s.Stage ?? "")),
        };

    private HistoryEntry OfWork(Fact fact) =>
        fact switch
        {
            Attempt a => At(a.Id, Entry(a, "opened", PartsSentences.AttemptBegun(Title(a.Stage), a.Number, a.Station))),
            InstrumentUse u => At(
                u.AttemptId,
                Entry(u, "instrument", PartsSentences.WithInstrument(u.InstrumentKind, u.InstrumentCode))
            ) with
            {
                Item = u.InstrumentCode,
            },
            Reading r => At(
                r.AttemptId,
                Entry(
                    r,
                    "reading",
                    r.Met ? $"{r.Characteristic} {r.Digits} {r.Unit}" : PartsSentences.OutsideItsLimits(r.Characteristic, r.Digits, r.Unit)
                )
            ) with
            {
                Reading = ReadingAnswer.Of(new(r, []), names.Person),
                Corrections = readings.GetValueOrDefault(r.Id) is { Corrections: { Count: > 0 } corrections }
                    ? [.. corrections.Select(CorrectionOf)]
                    : null,
            },
            Correction c when readings.GetValueOrDefault(c.ReadingId)?.Reading is { } r => At(
                r.AttemptId,
                Entry(c, "correction", PartsSentences.CorrectedTo(r.Characteristic, c.Digits, r.Unit, c.Reason))
            ) with
            {
                Corrects = r.Id,
                Value = new(c.Digits),
                Reason = c.Reason,
            },
            EvidenceRecord e when AttemptOf(e) is { } a => At(
                a.Id,
                Entry(e, "evidence", PartsSentences.KeptBytes(e.Name, e.Kind, e.LengthBytes))
            ) with
            {
                Evidence = EvidenceAnswer.Of(e),
            },
            AttemptEnding e => At(e.AttemptId, Entry(e, e.Abandoned ? "abandoned" : "closed", Ended(e))) with
            {
                Verdict = e.Verdict?.ToString().ToLowerInvariant(),
                Findings = e.Findings.Length == 0 ? null : e.Findings,
                Reason = e.Note,
            },
            _ => Entry(fact, "noted", fact.GetType().Name),
        };

    private HistoryEntry OfFitting(Fact fact)
    {
        var fitting = fact as Fitting ?? names.Fittings[((Removal)fact).FittingId];
        var own = fitting.PartId == dossier.Part.Id;
        var other = own ? names.ItemOf(fitting) : names.Parts[fitting.PartId].Serial;
        var entry = fact is Removal removal
            ? Entry(
                fact,
                own ? "removed" : "taken-out",
                own
                    ? PartsSentences.TakenOutOf(other, fitting.Position, removal.Reason)
                    : PartsSentences.TakenOutOfOtherReason(other, removal.Reason)
            ) with
            {
                Reason = removal.Reason,
            }
            : Entry(
                fact,
                own ? "fitted" : "fitted-into",
                own ? PartsSentences.FittedAs(other, fitting.Position) : PartsSentences.FittedIntoAs(other, fitting.Position)
            );
        return (own ? At(fitting.AttemptId, entry) : entry) with { Position = fitting.Position, Item = other };
    }

    private HistoryEntry Entry(Fact fact, string what, string words) =>
        new(fact.Id, what, words, fact.OccurredAt, fact.RecordedAt, names.Person(fact.By));

    private HistoryEntry At(Guid attemptId, HistoryEntry entry) =>
        attempts.GetValueOrDefault(attemptId) is not { } a
            ? entry
            : entry with
            {
                Stage = a.Stage,
                Attempt = a.Id,
                Station = a.Attempt.Station,
                Instruments = a.Instruments.Count == 0 ? null : [.. a.Instruments.Select(i => i.InstrumentCode)],
            };

    private AttemptView? AttemptOf(EvidenceRecord e) =>
        attempts.Values.FirstOrDefault(a => a.Id == e.AttemptId || (e.LoadId is not null && a.Attempt.LoadId == e.LoadId));

    private CorrectionInHistory CorrectionOf(Correction c) => new(c.Id, new(c.Digits), c.Met, c.Reason, names.Person(c.By), c.OccurredAt);

    private string Title(string stage) => dossier.Route.Find(stage)?.Title ?? stage;

    private string TitleOf(AttemptEnding e) => attempts.GetValueOrDefault(e.AttemptId) is { } a ? Title(a.Stage) : "attempt";

    private string Ended(AttemptEnding e) =>
        e switch
        {
            { Abandoned: true } => PartsSentences.StageAbandoned(TitleOf(e), e.Note),
            { Verdict: Verdict.Pass } => PartsSentences.StagePassed(TitleOf(e)),
            { Verdict: Verdict.Conditional } => PartsSentences.StageConditional(TitleOf(e), string.Join("; ", e.Findings)),
            _ => PartsSentences.StageFailed(TitleOf(e), string.Join("; ", e.Findings)),
        };

    private string Decided(Disposition d)
    {
        var backTo = d.ReturnTo is null ? "" : PartsSentences.BackTo(Title(d.ReturnTo));
        var limitedTo = d.LimitedTo is null ? "" : PartsSentences.LimitedTo(d.LimitedTo);
        return $"{d.Kind.ToString().ToLowerInvariant()}{backTo}{limitedTo}: {d.Reason}";
    }
}
