using System.Text.RegularExpressions;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.Delivery;

/// <summary>A unit that came back: the complaint, what was found, what was done. While it is here it can be worked on again.</summary>
public static partial class ReturnedUnit
{
    /// <summary>References are looked up by an index, which holds short texts only.</summary>
    public const int MaxReference = 100;

    /// <summary>Takes a shipped unit back in.</summary>
    public static Decision<UnitReturn> Open(Dossier dossier, string complaint, string? customerReference, Stamp stamp)
    {
        if (string.IsNullOrWhiteSpace(complaint))
        {
            return Refusal.Invalid("complaint", RefusalTexts.SayWhatTheCustomerComplainsOf);
        }

        if (customerReference?.Length > MaxReference)
        {
            return Refusal.Invalid("customerReference", RefusalTexts.CustomerReferenceIsTooLong(MaxReference));
        }

        if (dossier.Shipped is not { } shipped)
        {
            return Refusal.Conflict(
                RefusalTexts.OnlyWhatWasShippedComesBack(
                    dossier.Part.Serial,
                    dossier.Returned is null || dossier.Scrapped ? Words.Of(dossier.State()) : Words.Of(StandingCode.Returned)
                )
            );
        }

        if (stamp.OccurredAt < shipped.OccurredAt)
        {
            return Refusal.Conflict(RefusalTexts.CannotComeBackBeforeShipped(stamp.OccurredAt, shipped.OccurredAt), RefusalCode.OutOfOrder);
        }

        var opened = new UnitReturn(
            stamp.NewId(),
            dossier.Part.Id,
            complaint.Trim(),
            string.IsNullOrWhiteSpace(customerReference) ? null : customerReference.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return Decision.Accept(opened, opened);
    }

    /// <summary>Notes something that was found on it.</summary>
    public static Decision<ReturnFinding> Find(Dossier dossier, Guid returnId, string code, string description, Stamp stamp)
    {
        if (!CodePattern().IsMatch(code))
        {
            return Refusal.Invalid("code", RefusalTexts.CodeOfFaultIsSmallLetters);
        }

        if (string.IsNullOrWhiteSpace(description))
        {
            return Refusal.Invalid("description", RefusalTexts.SayWhatWasFound);
        }

        if (NotOpen(dossier, returnId) is { } refusal)
        {
            return refusal;
        }

        var finding = new ReturnFinding(
            stamp.NewId(),
            dossier.Part.Id,
            returnId,
            code,
            description.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return Decision.Accept(finding, finding);
    }

    /// <summary>
    /// Says how a return came out. <c>Scrapped</c> is the quality lead's to decide first, on a nonconformity; and what was decided to be
    /// scrapped comes out as nothing else. Refused without a reason, and when the return is closed.
    /// </summary>
    public static Decision<ReturnOutcome> ComeOut(Dossier dossier, Guid returnId, ReturnOutcomeKind kind, string reason, Stamp stamp)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", RefusalTexts.SayWhyItCameOutSo);
        }

        if (NotOpen(dossier, returnId) is { } refusal)
        {
            return refusal;
        }

        if (dossier.Scrapped != (kind == ReturnOutcomeKind.Scrapped))
        {
            return Refusal.Conflict(
                dossier.Scrapped
                    ? RefusalTexts.WasScrappedAndComesOutSo(dossier.Part.Serial)
                    : RefusalTexts.IsNotScrappedYet(dossier.Part.Serial)
            );
        }

        var outcome = new ReturnOutcome(
            stamp.NewId(),
            dossier.Part.Id,
            returnId,
            kind,
            reason.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return Decision.Accept(outcome, outcome);
    }

    /// <summary>
    /// Brings a return to its end with what was done; refused until something was found and somebody said how it came out.
    /// </summary>
    public static Decision<ReturnClosing> Close(Dossier dossier, Guid returnId, string action, Stamp stamp)
    {
        if (string.IsNullOrWhiteSpace(action))
        {
            return Refusal.Invalid("action", RefusalTexts.SayWhatWasDone);
        }

        if (NotOpen(dossier, returnId) is { } refusal)
        {
            return refusal;
        }

        var missing = MissingToClose(BackAgain.Of(dossier, returnId)!).Where(c => !c.Met).ToList();
        if (missing.Count > 0)
        {
            return new Refusal(
                RefusalKind.Conflict,
                RefusalTexts.ReturnIsNotClosedYet(dossier.Part.Serial, string.Join("; ", missing.Select(m => m.Because))),
                missing,
                new Dictionary<string, string[]>()
            );
        }

        var closing = new ReturnClosing(
            stamp.NewId(),
            dossier.Part.Id,
            returnId,
            action.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return Decision.Accept(closing, closing);
    }

    /// <summary>What closing a return asks for.</summary>
    public static IReadOnlyList<GateCheck> MissingToClose(BackAgain back) =>
        [
            back.Findings.Count > 0
                ? new("return-finding", true, RefusalTexts.SomethingWasFound(back.Findings.Count))
                : new("return-finding", false, RefusalTexts.NothingWasFoundYet, RefusalTexts.RecordWhatWasFound),
            OutcomeOf(back),
        ];

    /// <summary>Whether somebody said how it came out.</summary>
    internal static GateCheck OutcomeOf(BackAgain back) =>
        back.Outcome is { } outcome
            ? new("return-outcome", true, RefusalTexts.ItCameOutAs(Words.Of(outcome.Kind), outcome.Reason))
            : new("return-outcome", false, RefusalTexts.NobodySaidHowItCameOut, RefusalTexts.ServiceDeskSaysHowItCameOut);

    private static Refusal? NotOpen(Dossier dossier, Guid returnId) =>
        dossier.Of<UnitReturn>().All(r => r.Id != returnId) ? Refusal.NotFound(RefusalTexts.HasNoReturn(dossier.Part.Serial, returnId))
        : dossier.Of<ReturnClosing>().FirstOrDefault(c => c.ReturnId == returnId) is { } closed
            ? Refusal.Conflict(RefusalTexts.ReturnWasClosed(closed.OccurredAt, closed.Action), RefusalCode.AlreadyDone)
        : null;

    [GeneratedRegex("^[a-z0-9][a-z0-9-]{0,39}$")]
    private static partial Regex CodePattern();
}
