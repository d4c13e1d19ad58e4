namespace Traceability.Domain.Gates.Rules;

/// <summary>
/// Cure and recovery: at least so long after an earlier stage closed, or after the last reading of its log inside tolerance. The edge
/// itself is late enough.
/// </summary>
public static class WaitElapsed
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "wait";

    /// <summary>Says until when to wait, and for what.</summary>
    public static GateCheck? Check(GateQuestion q)
    {
        var waits = TimeAfterStage.Of(q, q.Stage.Waits.Select(w => (w.AfterStage, w.MinimumMinutes)));
        if (waits.Count == 0)
        {
            return null;
        }

        var last = waits.MaxBy(w => w.At)!;
        var (after, opensAt) = (q.TitleOf(last.Stage), q.Context.Calendar.Say(last.At));
        var because = last.ByLog ? WaitAfterLogOverAt(last.Minutes, after, opensAt) : WaitAfterOverAt(last.Minutes, after, opensAt);
        return q.Context.At >= last.At ? new(Rule, true, because, null, last.At) : new(Rule, false, because, WaitUntil(opensAt), last.At);
    }

    private static string WaitAfterOverAt(int minutes, string after, string opensAt) => GateTexts.Words.Say([minutes, after, opensAt]);

    private static string WaitAfterLogOverAt(int minutes, string after, string opensAt) => GateTexts.Words.Say([minutes, after, opensAt]);

    private static string WaitUntil(string opensAt) => GateTexts.Words.Say([opensAt]);
}
