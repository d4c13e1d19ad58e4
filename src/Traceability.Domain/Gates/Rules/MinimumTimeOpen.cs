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
        var because = LastsAtLeastUntil(q.Stage.Title, minutes, q.Context.Calendar.Say(endsAt));
        return q.Context.At >= endsAt
            ? new(Rule, true, because, null, endsAt)
            : new(Rule, false, because, CloseItAtOrLater(q.Context.Calendar.Say(endsAt)), endsAt);
    }

    private static string LastsAtLeastUntil(string stage, int minutes, string endsAt) => GateTexts.Words.Say([stage, minutes, endsAt]);

    private static string CloseItAtOrLater(string endsAt) => GateTexts.Words.Say([endsAt]);
}
