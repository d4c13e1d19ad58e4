using Traceability.Domain.Records;

namespace Traceability.Domain.Gates.Rules;

/// <summary>No nonconformity waits for a decision, on the part or on anything fitted in it.</summary>
public static class NoOpenNonconformity
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "nonconformities";

    /// <summary>Names the first one that is open.</summary>
    public static GateCheck Check(GateQuestion q)
    {
        var own = q.Dossier.OpenNonconformities().Select(n => OnThePart(q.Dossier.Part.Serial, InShort(n)));
        var inside = q
            .Dossier.Around.Inside.Where(p => p.Kind == InsideProblemKind.Nonconformity)
            .Select(p => OnInsideIt(p.Subject, p.Reason));
        var open = own.Concat(inside).ToList();
        return open.Count == 0
            ? new(Rule, true, NoNonconformityIsOpen)
            : new(Rule, false, OpenNonconformity(string.Join("; ", open)), QualityLeadDecidesOnIt);
    }

    /// <summary>
    /// What the service raised by itself begins with the stage and its verdict, and then lists every value: the list is for the page of the
    /// nonconformity.
    /// </summary>
    internal static string InShort(Nonconformity n) =>
        n.Code is NonconformityCodes.StageFailed or NonconformityCodes.StageConditional ? n.Description.Split(": ", 2)[0] : n.Description;

    private static string OnThePart(string serial, string what) => GateTexts.Words.Say([serial, what]);

    private static string OnInsideIt(string subject, string reason) => GateTexts.Words.Say([subject, reason]);

    private static string NoNonconformityIsOpen => GateTexts.Words.Say();

    private static string OpenNonconformity(string open) => GateTexts.Words.Say([open]);

    private static string QualityLeadDecidesOnIt => GateTexts.Words.Say();
}
