namespace Traceability.Domain.Routes;

/// <summary>The usual cautions of the trade (common practice, no source). Local rules and licensed practice prevail over every one of them.</summary>
public static class Cautions
{
    /// <summary>Caution texts by the code that routes use.</summary>
    public static readonly IReadOnlyDictionary<string, string> Texts = new Dictionary<string, string>
    {
        ["hot-tip"] = "Hot tip: burns. Stand it back in its holder before you let go of it.",
        ["hot-plate"] = "Heated plate: burns. It stays hot long after it is switched off.",
        ["adhesive"] = "Adhesive: keep off skin and eyes, do not breathe the fumes; follow its safety data sheet.",
        ["solvent"] = "Solvent: no flame or hot tip nearby, ventilate, close the bottle.",
        ["high-voltage"] = "Hazardous test voltage: guard closed before the voltage goes on; discharge the capsule before you touch it.",
        ["stored-charge"] = "A polarised capsule holds a charge: discharge it before you touch it.",
        ["solder"] = "Soldering: extraction on; hot iron; shield the film from flux and spatter.",
        ["climate-cabinet"] = "Warm, cold and humid cabinets: burns, and condensation on mains parts. Dry hands, gloves for hot trays.",
        ["loud-sound"] = "Test sound at high level: wear hearing protection or leave the room.",
        ["esd"] = "Boards are sensitive to static: wrist strap on.",
        ["mains"] = "Supplies and mains work: qualified people only.",
    };

    /// <summary>The sentence that goes with every caution.</summary>
    public const string LocalRulesPrevail = "Local rules and licensed practice prevail.";
}
