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
            ? new(Rule, true, EveryLotInsideItIsReleased)
            : new(
                Rule,
                false,
                InQuarantine(string.Join("; ", quarantined.Select(l => LotWithReason(l.Subject, l.Reason)))),
                QualityLeadReleasesTheLot
            );
    }

    private static string EveryLotInsideItIsReleased => GateTexts.Words.Say();

    private static string LotWithReason(string subject, string reason) => GateTexts.Words.Say([subject, reason]);

    private static string InQuarantine(string quarantined) => GateTexts.Words.Say([quarantined]);

    private static string QualityLeadReleasesTheLot => GateTexts.Words.Say();
}
