namespace Traceability.Domain.Gates.Rules;

/// <summary>
/// No later than so long after an earlier stage closed, or after the last reading of its log inside tolerance (insulation after the humid
/// phase). The edge itself is still in time.
/// </summary>
public static class WindowOpen
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "window";

    /// <summary>Says until when, and what to do when it is too late.</summary>
    public static GateCheck? Check(GateQuestion q)
    {
        var windows = TimeAfterStage.Of(q, q.Stage.Windows.Select(w => (w.AfterStage, w.MaximumMinutes)));
        if (windows.Count == 0)
        {
            return null;
        }

        var first = windows.MinBy(w => w.At)!;
        var (after, closesAt) = (q.TitleOf(first.Stage), q.Context.Calendar.Say(first.At));
        var because = first.ByLog
            ? WithinTimeOfLogUntil(first.Minutes, after, closesAt)
            : WithinTimeOfUntil(first.Minutes, after, closesAt);
        return q.Context.At <= first.At
            ? new(Rule, true, because, null, null, first.At)
            : new(Rule, false, TooLate(because), QualityLeadSendsItBackTo(after), null, first.At);
    }

    private static string WithinTimeOfUntil(int minutes, string after, string closesAt) => GateTexts.Words.Say([minutes, after, closesAt]);

    private static string WithinTimeOfLogUntil(int minutes, string after, string closesAt) =>
        GateTexts.Words.Say([minutes, after, closesAt]);

    private static string TooLate(string because) => GateTexts.Words.Say([because]);

    private static string QualityLeadSendsItBackTo(string after) => GateTexts.Words.Say([after]);
}
