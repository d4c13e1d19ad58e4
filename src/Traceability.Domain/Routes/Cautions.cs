namespace Traceability.Domain.Routes;

/// <summary>
/// The usual cautions of the trade (common practice, no source). Local rules and licensed practice prevail over every one of them.
/// </summary>
public static class Cautions
{
    /// <summary>Caution texts by the code that routes use.</summary>
    public static IReadOnlyDictionary<string, string> Texts =>
        new Dictionary<string, string>
        {
            ["hot-tip"] = RouteTexts.CautionHotTip,
            ["hot-plate"] = RouteTexts.CautionHotPlate,
            ["adhesive"] = RouteTexts.CautionAdhesive,
            ["solvent"] = RouteTexts.CautionSolvent,
            ["high-voltage"] = RouteTexts.CautionHighVoltage,
            ["stored-charge"] = RouteTexts.CautionStoredCharge,
            ["solder"] = RouteTexts.CautionSolder,
            ["climate-cabinet"] = RouteTexts.CautionClimateCabinet,
            ["loud-sound"] = RouteTexts.CautionLoudSound,
            ["esd"] = RouteTexts.CautionEsd,
            ["mains"] = RouteTexts.CautionMains,
        };

    /// <summary>The sentence that goes with every caution.</summary>
    public static string LocalRulesPrevail => RouteTexts.LocalRulesPrevail;
}
