namespace Traceability.Domain.Gates.Rules;

/// <summary>No lot inside was put back into quarantine after it was used.</summary>
public static class LotsInsideReleased
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "lots-inside";

    /// <summary>Names the lots in quarantine.</summary>
    public static GateCheck Check(GateQuestion q)
    {
        var quarantined = q.Dossier.Around.Inside.Where(p => p.Kind == InsideProblemKind.Quarantine).ToList();
        return quarantined.Count == 0
            ? new(Rule, true, GateTexts.EveryLotInsideItIsReleased)
            : new(
                Rule,
                false,
                GateTexts.InQuarantine(string.Join("; ", quarantined.Select(l => GateTexts.LotWithReason(l.Subject, l.Reason)))),
                GateTexts.QualityLeadReleasesTheLot
            );
    }
}
