using Traceability.Domain.Codes;

namespace Traceability.Domain.Scanning;

/// <summary>The state machine behind the one scan box: a session and a scan give a session, a prompt and a command.</summary>
/// <remarks>
/// Pure. What the stage needs is an argument; needs that belong to another part than the one on the bench are passed over. Whatever is typed
/// while a PIN is asked, except a printed code or an action, is the PIN: it goes into the command and nowhere else. Collected parts leave
/// the list only when the run starts, when one of them is refused, or by CLEAR. Checked by <c>StationWalkTests</c> and <c>StationDeskTests</c>.
/// </remarks>
public static class StationDesk
{
    private static readonly StationCommand Idle = new StationCommand.Nothing();

    /// <summary>Takes one scan.</summary>
    public static StationStep Take(StationSession session, Scan scan, StageNeeds? needs)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(scan);
        if (needs?.Part != session.Part) needs = null;
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

    /// <summary>Takes what came of a command; <paramref name="needs"/> as they are now.</summary>
    public static StationStep After(StationSession session, Outcome outcome, StageNeeds? needs)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(outcome);
        var (after, prompt) = StationOutcomes.Take(session, outcome, needs?.Part == session.Part ? needs : null);
        return new(after with { Last = prompt }, prompt, Idle);
    }

    internal static StationStep Say(StationSession session, Severity severity, string line, string? detail = null) =>
        new(session, new(severity, line, detail), Idle);

    internal static StationStep Order(StationSession session, StationCommand command, Severity severity, string line, string? detail = null) =>
        new(session, new(severity, line, detail), command);

    internal static StationStep SayNext(StationSession session, StageNeeds? needs) =>
        session is { Part: { } part, LoadParts.Count: 0 } && needs is null
            ? Order(session, new StationCommand.ShowPart(part), Severity.Wait, $"Looking at {part}.")
            : new(session, NextThing.Of(session, needs), Idle);

    private static StationStep TakePin(StationSession session, Scan scan) => scan switch
    {
        Scan.Number number => CheckPin(session, number.Typed),
        Scan.BadNumber number => CheckPin(session, number.Typed),
        Scan.Bare text => CheckPin(session, text.Text),
        // A bench whose person has lapsed waits for that person; whoever else comes finds it empty.
        Scan.Badge badge => AskPin(session.Badge is null && session.BadgeToProve != badge.Code ? session.WithoutPart() : session, badge.Code),
        Scan.Action { What: StationAction.No or StationAction.Back or StationAction.SignOut or StationAction.Clear } => session.Badge is null
            ? Say(session.WithoutPart() with { BadgeToProve = null }, Severity.Ask, "Scan your badge.")
            : Say(session with { Asks = Question.None, BadgeToProve = null }, Severity.Ask, "Go on as before."),
        Scan.Nothing or Scan.Action { What: StationAction.Help } => Say(session, Severity.Ask, "Type your PIN, or scan NO."),
        _ => Say(session, Severity.Refused, "The PIN comes first: type it, or scan NO."),
    };

    private static StationStep CheckPin(StationSession session, string typed) =>
        Order(session, new StationCommand.Identify(session.BadgeToProve ?? "", new Pin(typed)), Severity.Wait, "Checking the PIN.");

    private static StationStep AskPin(StationSession session, string badge) =>
        Say(session with { Asks = Question.Pin, BadgeToProve = badge }, Severity.Ask, "Type your PIN.", $"Badge {badge}");

    private static StationStep TakeReason(StationSession session, Scan scan, StageNeeds? needs) => (scan, session.AttemptId) switch
    {
        (_, null) or (Scan.Action { What: StationAction.No or StationAction.Back }, _) => SayNext(session with { Asks = Question.None }, needs),
        (Scan.Bare { Text: { Length: >= 3 } reason }, { } attempt) => Order(session with { Asks = Question.None },
            new StationCommand.Abandon(attempt, reason), Severity.Wait, "Giving the attempt up."),
        _ => Say(session, Severity.Ask, "Type in words why the attempt is given up, or scan NO."),
    };

    // Nothing is echoed here: people type their PIN before their badge.
    private static StationStep TakeSignedOut(StationSession session, Scan scan) => scan switch
    {
        Scan.Badge badge => AskPin(session, badge.Code),
        Scan.Station station => Say(session with { Station = station.Code }, Severity.Ask, "Scan your badge.", $"Station {station.Code}"),
        Scan.Bare bare when CodeText.TryRead(bare.Text, "A code", out var code, out _) =>
            Order(session, new StationCommand.LookUp(new Scan.Bare(code)), Severity.Wait, "Looking it up."),
        Scan.Nothing or Scan.Action { What: StationAction.Help } =>
            Say(session, Severity.Ask, "Scan your badge, then type your PIN.", "After that: the station, a part, its instruments, START."),
        _ => Say(session, Severity.Refused, "Scan your badge first."),
    };

    private static StationStep TakeSignedIn(StationSession session, Scan scan, StageNeeds? needs) => scan switch
    {
        Scan.Badge badge when badge.Code == session.Badge => SayNext(session, needs),
        Scan.Badge badge => AskPin(session, badge.Code),
        Scan.Station station => SayNext(session with { Station = station.Code }, needs),
        Scan.Action action => StationSheet.Take(session, action.What, needs),
        Scan.Nothing => SayNext(session, needs),
        Scan.WrongCheck wrong => Say(session, Severity.Refused, "That code was misread or mistyped: try again.",
            $"{wrong.Kind.Letters()}-{wrong.Id} should end in {wrong.Expected}, not {wrong.Found}."),
        _ => BenchItems.Take(session, scan, needs),
    };
}
