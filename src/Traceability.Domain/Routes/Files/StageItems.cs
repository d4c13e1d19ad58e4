using Traceability.Domain.Evidence;
using Traceability.Domain.Values;
using static System.FormattableString;

namespace Traceability.Domain.Routes.Files;

/// <summary>Reads what a stage lists: slots, characteristics, evidence, and what must match.</summary>
internal static class StageItems
{
    private const string SimpleAcceptance = "simple";
    private const string GuardedAcceptance = "guarded";

    public static Slot ReadSlot(YamlMap map)
    {
        var slot = new Slot(map.Text("position"), map.OptionalText("label") ?? map.Text("position"), map.OptionalText("lotKind"), map.OptionalText("partKind"), map.Flag("required", true));
        if (slot.LotKind is null == slot.PartKind is null)
        {
            map.Problem("a slot accepts either 'lotKind' or 'partKind'");
        }

        return map.Close(slot);
    }

    public static Characteristic ReadCharacteristic(YamlMap map)
    {
        var c = new Characteristic(
            map.Text("name"), map.OptionalText("label") ?? map.Text("name"), map.Text("unit"), map.OptionalNumber("nominal"), map.OptionalNumber("lower"),
            map.OptionalNumber("upper"), map.OptionalNumber("resolution"), map.Flag("entered", true), map.Flag("onCertificate", false), map.Flag("required", true))
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
            map.Problem(Invariant($"the limits of '{c.Name}' contradict each other: nominal {c.Nominal}, lower {c.Lower}, upper {c.Upper}"));
        }

        if (c.ExpandedUncertainty <= 0)
        {
            map.ProblemAt("expandedUncertainty", "'expandedUncertainty' must be above 0");
        }
        else if (c.Guarded && (c.ExpandedUncertainty is null || (c.Lower is null && c.Upper is null)))
        {
            map.ProblemAt("decisionRule", $"'{c.Name}': guarded acceptance needs 'expandedUncertainty' and a limit");
        }
        else if (c.Upper - c.Lower < 2 * c.Acceptance.GuardBand)
        {
            map.ProblemAt("expandedUncertainty", Invariant($"'{c.Name}': guard bands of {c.Acceptance.GuardBand} inside both limits leave no value that could pass"));
        }

        if (c.Resolution <= 0)
        {
            map.ProblemAt("resolution", "'resolution' must be above 0");
        }

        return map.Close(c);
    }

    private static bool ReadRule(YamlMap map)
    {
        var rule = map.OptionalText("decisionRule") ?? SimpleAcceptance;
        if (rule is not (SimpleAcceptance or GuardedAcceptance))
        {
            map.ProblemAt("decisionRule", $"unknown decision rule '{rule}'; known: {SimpleAcceptance}, {GuardedAcceptance}");
        }

        return rule == GuardedAcceptance;
    }

    public static EvidenceNeed ReadEvidence(YamlMap map)
    {
        var need = new EvidenceNeed(map.Text("name"), map.Text("kind"), map.Flag("required", true));
        if (need.Kind != "" && EvidenceKinds.FromCode(need.Kind) is null)
        {
            map.ProblemAt("kind", $"unknown kind of evidence '{need.Kind}'; known: {string.Join(", ", EvidenceKinds.All.Select(EvidenceKinds.Code))}");
        }

        return map.Close(need);
    }

    public static MatchRule ReadMatch(YamlMap map)
    {
        var match = new MatchRule(map.Texts("positions"), map.Text("characteristic"), map.Number("maximumDifference"))
        {
            SameFilmLot = map.Flag("sameFilmLot", false),
            Further = [.. map.Maps("further", "a further characteristic").Select(f => f.Close(new MatchLimit(f.Text("characteristic"), f.Number("maximumDifference"))))],
        };
        if (match.MaximumDifference < 0 || match.Further.Any(f => f.MaximumDifference < 0))
        {
            map.ProblemAt("maximumDifference", "'maximumDifference' must be at least 0");
        }

        return map.Close(match);
    }
}
