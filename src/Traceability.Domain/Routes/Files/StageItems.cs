using Traceability.Domain.Evidence;
using Traceability.Domain.Values;

namespace Traceability.Domain.Routes.Files;

/// <summary>Reads what a stage lists: slots, characteristics, evidence, and what must match.</summary>
internal static class StageItems
{
    private const string SimpleAcceptance = "simple";
    private const string GuardedAcceptance = "guarded";

    public static Slot ReadSlot(YamlMap map)
    {
        var slot = new Slot(
            map.Text("position"),
            map.OptionalText("label") ?? map.Text("position"),
            map.OptionalText("lotKind"),
            map.OptionalText("partKind"),
            map.Flag("required", true)
        );
        if (slot.LotKind is null == slot.PartKind is null)
        {
            map.Problem(RouteTexts.SlotAcceptsEitherLotKindOrPartKind);
        }

        return map.Close(slot);
    }

    public static Characteristic ReadCharacteristic(YamlMap map)
    {
        var c = new Characteristic(
            map.Text("name"),
            map.OptionalText("label") ?? map.Text("name"),
            map.Text("unit"),
            map.OptionalNumber("nominal"),
            map.OptionalNumber("lower"),
            map.OptionalNumber("upper"),
            map.OptionalNumber("resolution"),
            map.Flag("entered", true),
            map.Flag("onCertificate", false),
            map.Flag("required", true)
        )
        {
            ExpandedUncertainty = map.OptionalNumber("expandedUncertainty"),
            Guarded = ReadRule(map),
        };
        if (c.Unit != "" && !Units.TryFind(c.Unit, out _, out var unknown))
        {
            map.ProblemAt("unit", $"'{c.Name}': {unknown}");
        }

        if (c.Lower > c.Upper || c.Nominal < c.Lower || c.Nominal > c.Upper)
        {
            map.Problem(RouteTexts.LimitsContradictEachOther(c.Name, c.Nominal, c.Lower, c.Upper));
        }

        if (c.ExpandedUncertainty <= 0)
        {
            map.ProblemAt("expandedUncertainty", RouteTexts.UncertaintyMustBeAboveZero);
        }
        else if (c.Guarded && (c.ExpandedUncertainty is null || (c.Lower is null && c.Upper is null)))
        {
            map.ProblemAt("decisionRule", RouteTexts.GuardedAcceptanceNeedsMore(c.Name));
        }
        else if (c.Lower <= c.Upper && c.Upper - c.Lower < 2 * c.Acceptance.GuardBand)
        {
            map.ProblemAt("expandedUncertainty", RouteTexts.GuardBandsLeaveNothing(c.Name, c.Acceptance.GuardBand));
        }

        if (c.Resolution <= 0)
        {
            map.ProblemAt("resolution", RouteTexts.ResolutionMustBeAboveZero);
        }

        return map.Close(c);
    }

    private static bool ReadRule(YamlMap map)
    {
        var rule = map.OptionalText("decisionRule") ?? SimpleAcceptance;
        if (rule is not (SimpleAcceptance or GuardedAcceptance))
        {
            map.ProblemAt("decisionRule", RouteTexts.UnknownDecisionRule(rule, SimpleAcceptance, GuardedAcceptance));
        }

        return rule == GuardedAcceptance;
    }

    public static EvidenceNeed ReadEvidence(YamlMap map)
    {
        var need = new EvidenceNeed(map.Text("name"), map.Text("kind"), map.Flag("required", true));
        if (need.Kind != "" && EvidenceKinds.FromCode(need.Kind) is null)
        {
            map.ProblemAt(
                "kind",
                RouteTexts.UnknownKindOfEvidence(need.Kind, string.Join(", ", EvidenceKinds.All.Select(EvidenceKinds.Code)))
            );
        }

        return map.Close(need);
    }

    public static MatchRule ReadMatch(YamlMap map)
    {
        var match = new MatchRule(map.Texts("positions"), map.Text("characteristic"), map.Number("maximumDifference"))
        {
            SameFilmLot = map.Flag("sameFilmLot", false),
            Further =
            [
                .. map.Maps("further", RouteTexts.AFurtherCharacteristic)
                    .Select(f => f.Close(new MatchLimit(f.Text("characteristic"), f.Number("maximumDifference")))),
            ],
        };
        if (match.MaximumDifference < 0 || match.Further.Any(f => f.MaximumDifference < 0))
        {
            map.ProblemAt("maximumDifference", RouteTexts.DifferenceMustNotBeNegative);
        }

        return map.Close(match);
    }
}
