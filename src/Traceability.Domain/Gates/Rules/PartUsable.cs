namespace Traceability.Domain.Gates.Rules;

/// <summary>A part that is scrapped, shipped, on hold or fitted in another is not worked on.</summary>
public static class PartUsable
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "part-usable";

    /// <summary>Judges the part as a whole.</summary>
    public static GateCheck Check(GateQuestion q)
    {
        var part = q.Dossier.Part.Serial;
        return q.Dossier switch
        {
            { Scrapped: true } => new(Rule, false, GateTexts.WasScrapped(part), GateTexts.NothingTakeAnotherPart),
            { Shipped: not null } => new(Rule, false, GateTexts.HasLeftTheWorkshop(part), GateTexts.ServiceDeskOpensAReturn),
            { Around.FittedInSerial: { } parent } => new(Rule, false, GateTexts.IsFittedIn(part, parent), GateTexts.TakeItOutFirst(parent)),
            _ when q.Dossier.OpenHolds().FirstOrDefault() is { } hold => new(
                Rule,
                false,
                GateTexts.IsOnHold(part, hold.Reason),
                GateTexts.QualityLeadLiftsTheHold
            ),
            _ => new(Rule, true, GateTexts.IsInTheWorkshopAndFree(part)),
        };
    }
}
