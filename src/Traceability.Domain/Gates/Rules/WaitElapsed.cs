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
        var waits = q
            .Stage.Waits.Select(w => (w.AfterStage, w.MinimumMinutes, Pass: q.Dossier.CountingPass(w.AfterStage)))
            .Where(w => w.Pass is not null)
            .Select(w =>
                (
                    w.AfterStage,
                    w.MinimumMinutes,
                    ByLog: w.Pass!.Ending!.CountsFrom is not null,
                    OpensAt: w.Pass.CountsFrom!.Value.AddMinutes(w.MinimumMinutes)
                )
            )
            .ToList();
        if (waits.Count == 0)
        {
            return null;
        }

        var (after, minutes, byLog, opensAt) = waits.MaxBy(w => w.OpensAt);
        var because = byLog
            ? GateTexts.WaitAfterLogOverAt(minutes, q.TitleOf(after), q.Context.Calendar.Say(opensAt))
            : GateTexts.WaitAfterOverAt(minutes, q.TitleOf(after), q.Context.Calendar.Say(opensAt));
        return q.Context.At >= opensAt
            ? new(Rule, true, because, null, opensAt)
            : new(Rule, false, because, GateTexts.WaitUntil(q.Context.Calendar.Say(opensAt)), opensAt);
    }
}
