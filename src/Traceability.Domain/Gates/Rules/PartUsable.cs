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
            { Scrapped: true } => new(Rule, false, $"{part} was scrapped", "nothing: take another part"),
            { Shipped: not null } => new(Rule, false, $"{part} has left the workshop", "the service desk opens a return when it comes back"),
            { Around.FittedInSerial: { } parent } => new(Rule, false, $"{part} is fitted in {parent}", $"take it out of {parent} first"),
            _ when q.Dossier.OpenHolds().FirstOrDefault() is { } hold => new(Rule, false, $"{part} is on hold: {hold.Reason}", "the quality lead lifts the hold"),
            _ => new(Rule, true, $"{part} is in the workshop and free"),
        };
    }
}
