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
        var windows = q
            .Stage.Windows.Select(w => (w.AfterStage, w.MaximumMinutes, Pass: q.Dossier.CountingPass(w.AfterStage)))
            .Where(w => w.Pass is not null)
            .Select(w =>
                (
                    w.AfterStage,
                    w.MaximumMinutes,
                    ByLog: w.Pass!.Ending!.CountsFrom is not null,
                    ClosesAt: w.Pass.CountsFrom!.Value.AddMinutes(w.MaximumMinutes)
                )
            )
            .ToList();
        if (windows.Count == 0)
        {
            return null;
        }

        var (after, minutes, byLog, closesAt) = windows.MinBy(w => w.ClosesAt);
        var because = byLog
            ? GateTexts.WithinTimeOfLogUntil(minutes, q.TitleOf(after), q.Context.Calendar.Say(closesAt))
            : GateTexts.WithinTimeOfUntil(minutes, q.TitleOf(after), q.Context.Calendar.Say(closesAt));
        return q.Context.At <= closesAt
            ? new(Rule, true, because, null, null, closesAt)
            : new(Rule, false, GateTexts.TooLate(because), GateTexts.QualityLeadSendsItBackTo(q.TitleOf(after)), null, closesAt);
    }
}
