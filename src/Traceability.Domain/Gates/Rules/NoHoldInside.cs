namespace Traceability.Domain.Gates.Rules;

/// <summary>No hold on any lot or part that it is made of.</summary>
public static class NoHoldInside
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "holds";

    /// <summary>Names what is held.</summary>
    public static GateCheck Check(GateQuestion q)
    {
        var held = q.Dossier.Around.Inside.Where(p => p.Kind == InsideProblemKind.Hold).ToList();
        return held.Count == 0
            ? new(Rule, true, NothingInsideItIsOnHold)
            : new(
                Rule,
                false,
                OnHold(string.Join("; ", held.Select(h => $"{h.Subject} ({h.Reason})"))),
                QualityLeadLiftsTheHoldOrItIsTakenOut
            );
    }

    private static string NothingInsideItIsOnHold => GateTexts.Words.Say();

    private static string OnHold(string held) => GateTexts.Words.Say([held]);

    private static string QualityLeadLiftsTheHoldOrItIsTakenOut => GateTexts.Words.Say();
}
