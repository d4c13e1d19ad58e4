namespace Traceability.Domain.Scanning;

/// <summary>A value typed wrongly is put right at the bench while its attempt is open: which value, what it should be, why.</summary>
/// <remarks>
/// Nothing is overwritten: the command supersedes the reading, and both stay in the part's history. Checked by
/// <c>StationCorrectionTests</c>.
/// </remarks>
internal static class StationCorrection
{
    private static string Ways => PromptTexts.WaysWhileCorrecting;

    /// <summary>Turns to the value taken last, which is the one that was just seen to be wrong.</summary>
    public static StationStep Begin(StationSession session, StageNeeds? needs) =>
        needs switch
        {
            { IsUnderWay: true, Taken: [.., var last] } => AskValue(session, last, Severity.Ask),
            { IsUnderWay: true } => StationDesk.Say(
                session,
                Severity.Refused,
                PromptTexts.NoValueWasTakenHereYet,
                NextThing.InAttempt(session, needs)
            ),
            _ => StationDesk.Say(session, Severity.Refused, PromptTexts.NothingIsStartedHere, PromptTexts.ValuesOfAStageThatIsOver),
        };

    /// <summary>Takes what should stand in the place of the value, or turns to another one.</summary>
    public static StationStep TakeValue(StationSession session, Scan scan, StageNeeds? needs)
    {
        if (Chosen(session, needs) is not { } taken)
            return Leave(session, needs);
        return scan switch
        {
            Scan.Number number => AskReason(
                session with
                {
                    Correcting = new(taken.Id, number.Value.Digits),
                },
                taken,
                number.Value.Digits,
                Severity.Ask
            ),
            Scan.BadNumber bad => StationDesk.Say(session, Severity.Refused, bad.Problem, Ways),
            Scan.Action { What: StationAction.Next } => AskValue(session, Turned(needs!, taken, +1), Severity.Ask),
            Scan.Action { What: StationAction.Back } => AskValue(session, Turned(needs!, taken, -1), Severity.Ask),
            Scan.Action { What: StationAction.No } => Leave(session, needs),
            Scan.Position { Name: var name } => ByName(session, needs!, name, taken),
            Scan.Bare { Text: var name } => ByName(session, needs!, name, taken),
            Scan.Nothing or Scan.Action { What: StationAction.Correct or StationAction.Help } => AskValue(session, taken, Severity.Ask),
            _ => AskValue(session, taken, Severity.Refused),
        };
    }

    /// <summary>Takes the reason, and orders the correction.</summary>
    public static StationStep TakeReason(StationSession session, Scan scan, StageNeeds? needs)
    {
        if (Chosen(session, needs) is not { } taken || session.Correcting is not { Digits: { } digits })
            return Leave(session, needs);
        return scan switch
        {
            _ when ReasonWords.Of(scan) is { } reason => Order(session, taken, digits, reason),
            Scan.Action { What: StationAction.Back } => AskValue(session, taken, Severity.Ask),
            Scan.Action { What: StationAction.No } => Leave(session, needs),
            Scan.Nothing => AskReason(session, taken, digits, Severity.Ask),
            _ => AskReason(session, taken, digits, Severity.Refused, PromptTexts.CodeOrNumberIsNoReason),
        };
    }

    /// <summary>What is being asked about a value; null when nothing is.</summary>
    public static Prompt? Asked(StationSession session, StageNeeds? needs) =>
        Chosen(session, needs) is not { } taken ? null
        : session is { Asks: Question.CorrectReason, Correcting.Digits: { } digits }
            ? AskReason(session, taken, digits, Severity.Ask).Prompt
        : AskValue(session, taken, Severity.Ask).Prompt;

    private static StationStep AskValue(StationSession session, TakenReading taken, Severity severity) =>
        StationDesk.Say(
            session with
            {
                Asks = Question.CorrectValue,
                Correcting = new(taken.Id),
            },
            severity,
            PromptTexts.TypeWhatItShouldBe(taken.What.Label, Shown(taken, taken.Digits), taken.What.Limits),
            Ways
        );

    private static StationStep AskReason(
        StationSession session,
        TakenReading taken,
        string digits,
        Severity severity,
        string? because = null
    ) =>
        StationDesk.Say(
            session with
            {
                Asks = Question.CorrectReason,
            },
            severity,
            PromptTexts.TypeInWordsWhyItIsCorrected(taken.What.Label, Shown(taken, digits), Shown(taken, taken.Digits)),
            because is null
                ? PromptTexts.BothValuesStayInTheHistory
                : PromptTexts.KeptAndNext(because, PromptTexts.BothValuesStayInTheHistory)
        );

    private static StationStep Order(StationSession session, TakenReading taken, string digits, string reason) =>
        StationDesk.Order(
            session with
            {
                Asks = Question.None,
                Correcting = null,
            },
            new StationCommand.CorrectReading(taken.Id, digits, reason),
            taken.What.IsMetBy(digits) ? Severity.Ok : Severity.Outside,
            PromptTexts.CountsNow(taken.What.Label, Shown(taken, digits)),
            PromptTexts.BeforeThat(Shown(taken, taken.Digits), reason)
        );

    private static StationStep ByName(StationSession session, StageNeeds needs, string name, TakenReading now) =>
        needs.Taken.FirstOrDefault(other => NextThing.Same(other.What.Name, name)) is { } other
            ? AskValue(session, other, Severity.Ask)
            : StationDesk.Say(
                session,
                Severity.Refused,
                PromptTexts.NeitherANumberNorAValue(now.What.Label),
                PromptTexts.TakenSoFar(string.Join(", ", needs.Taken.Select(taken => taken.What.Name)), Ways)
            );

    private static StationStep Leave(StationSession session, StageNeeds? needs) =>
        StationDesk.PromptNext(session with { Asks = Question.None, Correcting = null }, needs);

    private static TakenReading? Chosen(StationSession session, StageNeeds? needs) =>
        needs is { IsUnderWay: true } ? needs.Taken.FirstOrDefault(taken => taken.Id == session.Correcting?.ReadingId) : null;

    private static TakenReading Turned(StageNeeds needs, TakenReading from, int by)
    {
        var at = needs.Taken.ToList().IndexOf(from);
        return needs.Taken[(at + by + needs.Taken.Count) % needs.Taken.Count];
    }

    private static string Shown(TakenReading taken, string digits) => $"{digits} {taken.What.Symbol}".TrimEnd();
}
