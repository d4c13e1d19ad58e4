using Traceability.Domain.Codes;

namespace Traceability.Domain.Scanning;

/// <summary>The state machine behind the one scan box: a session and a scan give a session, a prompt and a command.</summary>
/// <remarks>
/// Pure. What the stage needs is an argument; needs that belong to another part than the one on the bench are passed over. Whatever is
/// typed while a PIN is asked, except a printed code or an action, is the PIN: it goes into the command and nowhere else. Collected parts
/// leave the list only when the run starts, when one of them is refused, or by CLEAR. Checked by <c>StationWalkTests</c> and
/// <c>StationDeskTests</c>.
/// </remarks>
public static class StationDesk
{
    private static readonly StationCommand Idle = new StationCommand.Nothing();

    /// <summary>Takes one scan.</summary>
    public static StationStep Take(StationSession session, Scan scan, StageNeeds? needs)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(scan);
        if (needs?.Part != session.Part)
            needs = null;
        if (session.IsVoidIn(needs))
            return Behind(session, needs);
        session = session.InStepWith(needs);
        var step = session.Asks switch
        {
            Question.Pin => TakePin(session, scan),
            Question.AbandonReason => TakeReason(session, scan, needs),
            Question.CorrectValue => StationCorrection.TakeValue(session, scan, needs),
            Question.CorrectReason => StationCorrection.TakeReason(session, scan, needs),
            _ when session.Badge is null => TakeSignedOut(session, scan),
            _ => TakeSignedIn(session, scan, needs),
        };
        return step with { Session = step.Session with { Last = step.Prompt } };
    }

    /// <summary>
    /// The session as the facts have it: what is open on the part, and no question about an attempt that somebody has ended.
    /// </summary>
    public static StationSession InStep(StationSession session, StageNeeds? needs)
    {
        ArgumentNullException.ThrowIfNull(session);
        return session.InStepWith(needs);
    }

    /// <summary>
    /// The value that the station asks for and a plain number would be taken for; null while something else is asked for.
    /// </summary>
    public static MissingCharacteristic? Expected(StationSession session, StageNeeds needs)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(needs);
        if (NextThing.Slot(needs, session.ChosenPosition) is not null)
            return null;
        return session.ChosenCharacteristic is not null || !needs.Slots.Any(slot => slot.IsRequired)
            ? NextThing.CharacteristicFor(session, needs)
            : null;
    }

    /// <summary>Takes a scan that answered something older than what is asked now: not at all, and says so.</summary>
    public static StationStep Behind(StationSession session, StageNeeds? needs)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (needs?.Part != session.Part)
            needs = null;
        var now = session.InStepWith(needs);
        var next = Asked(now, needs);
        var how = PromptTexts.NowItIs(next.Detail is { } where ? PromptTexts.WhereAndNext(where, next.Line) : next.Line);
        var prompt =
            !session.IsVoidIn(needs) ? new Prompt(Severity.Refused, PromptTexts.WindowShowedSomethingOlder, how)
            : session.Asks == Question.AbandonReason ? new(Severity.Refused, PromptTexts.NothingWasAbandonedItEnded, how)
            : new(
                Severity.Refused,
                PromptTexts.NothingWasCorrectedItEnded,
                PromptTexts.KeptAndNext(PromptTexts.ValuesOfAStageThatIsOver, how)
            );
        return new(now with { Last = prompt }, prompt, Idle);
    }

    /// <summary>What to say where things have changed since the last scan: what is asked now.</summary>
    public static Prompt Now(StationSession session, StageNeeds? needs)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (needs?.Part != session.Part)
            needs = null;
        return session.IsVoidIn(needs) ? Behind(session, needs).Prompt : Asked(session.InStepWith(needs), needs);
    }

    private static Prompt Asked(StationSession session, StageNeeds? needs) =>
        session.Asks switch
        {
            Question.Pin => new(Severity.Ask, PromptTexts.TypeYourPin, PromptTexts.TheBadge(session.BadgeToProve ?? "")),
            Question.AbandonReason => new(Severity.Ask, PromptTexts.TypeInWordsWhyTheAttempt),
            Question.CorrectValue or Question.CorrectReason when StationCorrection.Asked(session, needs) is { } asked => asked,
            _ => NextThing.Of(session, needs),
        };

    /// <summary>Takes what came of a command; <paramref name="needs"/> as they are now.</summary>
    public static StationStep After(StationSession session, ScanOutcome outcome, StageNeeds? needs)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(outcome);
        var (after, prompt) = StationOutcomes.Take(session, outcome, needs?.Part == session.Part ? needs : null);
        return new(after with { Last = prompt }, prompt, Idle);
    }

    internal static StationStep Say(StationSession session, Severity severity, string line, string? detail = null) =>
        new(session, new(severity, line, detail), Idle);

    internal static StationStep Order(
        StationSession session,
        StationCommand command,
        Severity severity,
        string line,
        string? detail = null
    ) => new(session, new(severity, line, detail), command);

    internal static StationStep PromptNext(StationSession session, StageNeeds? needs) =>
        session is { Part: { } part, LoadParts.Count: 0 } && needs is null
            ? Order(session, new StationCommand.ShowPart(part), Severity.Wait, PromptTexts.LookingAt(part))
            : new(session, NextThing.Of(session, needs), Idle);

    private static StationStep TakePin(StationSession session, Scan scan) =>
        scan switch
        {
            Scan.Number number => CheckPin(session, number.Typed),
            Scan.BadNumber number => CheckPin(session, number.Typed),
            // The badge itself, scanned once more or typed where the PIN is asked, is no attempt at the PIN.
            Scan.Bare text when NextThing.Same(text.Text, session.BadgeToProve) => AskPin(session, session.BadgeToProve!),
            Scan.Bare text => CheckPin(session, text.Text),
            // A bench whose person has lapsed waits for that person; whoever else comes finds it empty.
            Scan.Badge badge => AskPin(
                session.Badge is null && session.BadgeToProve != badge.Code ? session.WithoutPart() : session,
                badge.Code
            ),
            Scan.Action { What: StationAction.No or StationAction.Back or StationAction.SignOut or StationAction.Clear } => session.Badge
                is null
                ? Say(session.WithoutPart() with { BadgeToProve = null }, Severity.Ask, PromptTexts.ScanYourBadge)
                : Say(session with { Asks = Question.None, BadgeToProve = null }, Severity.Ask, PromptTexts.GoOnAsBefore),
            Scan.Nothing or Scan.Action { What: StationAction.Help } => Say(session, Severity.Ask, PromptTexts.TypeYourPinOrScanNo),
            _ => Say(session, Severity.Refused, PromptTexts.PinComesFirst),
        };

    private static StationStep CheckPin(StationSession session, string typed) =>
        Order(session, new StationCommand.Identify(session.BadgeToProve ?? "", new Pin(typed)), Severity.Wait, PromptTexts.CheckingThePin);

    private static StationStep AskPin(StationSession session, string badge) =>
        Say(session with { Asks = Question.Pin, BadgeToProve = badge }, Severity.Ask, PromptTexts.TypeYourPin, PromptTexts.TheBadge(badge));

    private static StationStep TakeReason(StationSession session, Scan scan, StageNeeds? needs) =>
        (scan, session.AttemptId) switch
        {
            (_, null) or (Scan.Action { What: StationAction.No or StationAction.Back }, _) => PromptNext(
                session with
                {
                    Asks = Question.None,
                },
                needs
            ),
            (_, { } attempt) when ReasonWords.Of(scan) is { } reason => Order(
                session with
                {
                    Asks = Question.None,
                },
                new StationCommand.Abandon(attempt, reason),
                Severity.Wait,
                PromptTexts.GivingTheAttemptUp
            ),
            (Scan.Nothing or Scan.Action { What: StationAction.Abandon or StationAction.Help }, _) => Say(
                session,
                Severity.Ask,
                PromptTexts.TypeInWordsWhyTheAttempt
            ),
            _ => Say(session, Severity.Refused, PromptTexts.TypeInWordsWhyTheAttempt, PromptTexts.CodeOrNumberIsNoReason),
        };

    // Nothing is echoed here: people type their PIN before their badge.
    private static StationStep TakeSignedOut(StationSession session, Scan scan) =>
        scan switch
        {
            Scan.Badge badge => AskPin(session, badge.Code),
            Scan.Station station => Say(
                session with
                {
                    Station = station.Code,
                },
                Severity.Ask,
                PromptTexts.ScanYourBadge,
                PromptTexts.TheStation(station.Code)
            ),
            Scan.Bare bare when CodeText.TryRead(bare.Text, PromptTexts.ACode, out var code, out _) => Order(
                session,
                new StationCommand.LookUp(new Scan.Bare(code)),
                Severity.Wait,
                PromptTexts.LookingItUp
            ),
            Scan.Nothing or Scan.Action { What: StationAction.Help } => Say(
                session,
                Severity.Ask,
                PromptTexts.ScanYourBadgeThenTypeYourPin,
                PromptTexts.WhatComesAfterTheBadge
            ),
            _ => Say(session, Severity.Refused, PromptTexts.ScanYourBadgeFirst),
        };

    private static StationStep TakeSignedIn(StationSession session, Scan scan, StageNeeds? needs) =>
        scan switch
        {
            Scan.Badge badge when badge.Code == session.Badge => PromptNext(session, needs),
            Scan.Badge badge => AskPin(session, badge.Code),
            Scan.Station station => PromptNext(session with { Station = station.Code }, needs),
            Scan.Action action => StationSheet.Take(session, action.What, needs),
            Scan.Nothing => PromptNext(session, needs),
            Scan.WrongCheck wrong => Say(
                session,
                Severity.Refused,
                PromptTexts.CodeWasMisread,
                PromptTexts.CodeShouldEndIn(wrong.Kind.Letters(), wrong.Id, wrong.Expected, wrong.Found)
            ),
            _ => BenchItems.Take(session, scan, needs),
        };
}
