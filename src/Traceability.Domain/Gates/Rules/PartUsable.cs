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
            { Scrapped: true } => new(Rule, false, WasScrapped(part), NothingTakeAnotherPart),
            { Shipped: not null } => new(Rule, false, HasLeftTheWorkshop(part), ServiceDeskOpensAReturn),
            { Around.FittedInSerial: { } parent } => new(Rule, false, IsFittedIn(part, parent), TakeItOutFirst(parent)),
            _ when q.Dossier.OpenHolds().FirstOrDefault() is { } hold => new(
                Rule,
                false,
                GateTexts.IsOnHold(part, hold.Reason),
                QualityLeadLiftsTheHold
            ),
            _ => new(Rule, true, IsInTheWorkshopAndFree(part)),
        };
    }

    private static string WasScrapped(string part) => GateTexts.Words.Say([part]);

    private static string NothingTakeAnotherPart => GateTexts.Words.Say();

    private static string HasLeftTheWorkshop(string part) => GateTexts.Words.Say([part]);

    private static string ServiceDeskOpensAReturn => GateTexts.Words.Say();

    private static string IsFittedIn(string part, string parent) => GateTexts.Words.Say([part, parent]);

    private static string TakeItOutFirst(string parent) => GateTexts.Words.Say([parent]);

    private static string QualityLeadLiftsTheHold => GateTexts.Words.Say();

    private static string IsInTheWorkshopAndFree(string part) => GateTexts.Words.Say([part]);
}
