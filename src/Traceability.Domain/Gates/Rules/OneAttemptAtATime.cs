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
                IsOpenAtSince(q.TitleOf(open.Stage), open.Attempt.Station, q.Context.Calendar.Say(open.Attempt.OccurredAt)),
                CloseOrAbandonThatAttemptFirst
            )
            : new(Rule, true, NoAttemptIsOpen);

    private static string IsOpenAtSince(string stage, string station, string occurredAt) =>
        GateTexts.Words.Say([stage, station, occurredAt]);

    private static string CloseOrAbandonThatAttemptFirst => GateTexts.Words.Say();

    private static string NoAttemptIsOpen => GateTexts.Words.Say();
}
