namespace Traceability.Domain.Gates.Rules;

/// <summary>Two builders never hold the same part.</summary>
public static class OneAttemptAtATime
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "one-at-a-time";

    /// <summary>Refuses a second open attempt.</summary>
    public static GateCheck Check(GateQuestion q) =>
        q.Dossier.OpenAttempt is { } open
            ? new(
                Rule,
                false,
                GateTexts.IsOpenAtSince(q.TitleOf(open.Stage), open.Attempt.Station, q.Context.Calendar.Say(open.Attempt.OccurredAt)),
                GateTexts.CloseOrAbandonThatAttemptFirst
            )
            : new(Rule, true, GateTexts.NoAttemptIsOpen);
}
