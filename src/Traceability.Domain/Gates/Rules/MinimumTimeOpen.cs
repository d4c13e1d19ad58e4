namespace Traceability.Domain.Gates.Rules;

/// <summary>A cure or drying stays on at least so long. The edge itself is long enough.</summary>
public static class MinimumTimeOpen
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "minimum-time";

    /// <summary>Says from when the attempt may be closed.</summary>
    public static GateCheck? Check(GateQuestion q)
    {
        if (q.Stage.MinimumOpenMinutes is not { } minutes || q.Dossier.OpenAttempt is not { } open)
        {
            return null;
        }

        var endsAt = open.Attempt.OccurredAt.AddMinutes(minutes);
        var because = GateTexts.LastsAtLeastUntil(q.Stage.Title, minutes, q.Context.Calendar.Say(endsAt));
        return q.Context.At >= endsAt
            ? new(Rule, true, because, null, endsAt)
            : new(Rule, false, because, GateTexts.CloseItAtOrLater(q.Context.Calendar.Say(endsAt)), endsAt);
    }
}
