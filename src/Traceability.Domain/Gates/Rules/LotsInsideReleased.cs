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
            ? new(Rule, true, "every lot inside it is released")
            : new(Rule, false, $"in quarantine: {string.Join("; ", quarantined.Select(l => $"lot {l.Subject} ({l.Reason})"))}", "the quality lead releases the lot, or what is made of it is taken out");
    }
}
