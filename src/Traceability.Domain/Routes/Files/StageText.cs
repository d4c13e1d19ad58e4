using Traceability.Domain.Values;

namespace Traceability.Domain.Routes.Files;

/// <summary>Reads one stage of a route file.</summary>
internal static class StageText
{
    public static Stage Read(YamlMap map)
    {
        var stage = new Stage(map.Text("code"), map.Text("title"), map.Text("method"))
        {
            Cautions = map.Texts("cautions"),
            Slots = [.. map.Maps("slots", "a slot").Select(ReadSlot)],
            Characteristics = [.. map.Maps("characteristics", "a characteristic").Select(ReadCharacteristic)],
            Evidence = [.. map.Maps("evidence", "a piece of evidence").Select(ReadEvidence)],
            MinimumOpenMinutes = map.OptionalWhole("minimumOpenMinutes"),
            Waits = [.. map.Maps("waits", "a wait").Select(w => Close(w, new Wait(w.Text("afterStage"), w.OptionalWhole("minimumMinutes") ?? 0)))],
            Windows = [.. map.Maps("windows", "a window").Select(w => Close(w, new Window(w.Text("afterStage"), w.OptionalWhole("maximumMinutes") ?? 0)))],
            InstrumentKinds = map.Texts("instrumentKinds"),
            CheckedToday = map.Flag("checkedToday", false),
            Qualification = map.OptionalText("qualification"),
            Loads = map.Flag("loads", false),
            AllowedAttempts = map.OptionalWhole("allowedAttempts"),
            ReworkReturnsTo = map.OptionalText("reworkReturnsTo"),
            NotByBuilderOf = map.Texts("notByBuilderOf"),
            FreesCarrier = map.Flag("freesCarrier", false),
            Match = map.OptionalMap("match") is { } match ? ReadMatch(match) : null,
            Parameters = map.OptionalMap("parameters") is { } parameters ? ReadParameters(parameters) : StageParameters.None,
        };
        map.NothingElse();
        Check(stage, map);
        return stage;
    }

    private static void Check(Stage stage, YamlMap map)
    {
        foreach (var caution in stage.Cautions.Where(c => !Cautions.Texts.ContainsKey(c)))
        {
            map.Problem($"no caution '{caution}'; known: {string.Join(", ", Cautions.Texts.Keys)}");
        }

        foreach (var twice in stage.Characteristics.GroupBy(c => c.Name).Where(g => g.Count() > 1))
        {
            map.Problem($"characteristic '{twice.Key}' is there twice");
        }

        foreach (var twice in stage.Slots.GroupBy(s => s.Position).Where(g => g.Count() > 1))
        {
            map.Problem($"position '{twice.Key}' is there twice");
        }

        foreach (var position in stage.Match?.Positions.Where(p => stage.Slot(p)?.PartKind is null) ?? [])
        {
            map.Problem($"'match' names '{position}', which is not a slot for a part");
        }
    }

    private static Slot ReadSlot(YamlMap map)
    {
        var slot = new Slot(map.Text("position"), map.OptionalText("label") ?? map.Text("position"), map.OptionalText("lotKind"), map.OptionalText("partKind"), map.Flag("required", true));
        if (slot.LotKind is null == slot.PartKind is null)
        {
            map.Problem("a slot accepts either 'lotKind' or 'partKind'");
        }

        return Close(map, slot);
    }

    private static Characteristic ReadCharacteristic(YamlMap map)
    {
        var c = new Characteristic(
            map.Text("name"), map.OptionalText("label") ?? map.Text("name"), map.Text("unit"), map.OptionalNumber("nominal"), map.OptionalNumber("lower"),
            map.OptionalNumber("upper"), map.OptionalNumber("resolution"), map.Flag("entered", true), map.Flag("onCertificate", false), map.Flag("required", true));
        if (!Units.TryFind(c.Unit, out _, out var unknown))
        {
            map.Problem($"'{c.Name}': {unknown}");
        }

        if (c.Lower > c.Upper || c.Nominal < c.Lower || c.Nominal > c.Upper)
        {
            map.Problem($"the limits of '{c.Name}' contradict each other: nominal {c.Nominal}, lower {c.Lower}, upper {c.Upper}");
        }

        return Close(map, c);
    }

    private static EvidenceNeed ReadEvidence(YamlMap map)
    {
        var need = new EvidenceNeed(map.Text("name"), map.Text("kind"), map.Flag("required", true));
        if (Evidence.EvidenceKinds.FromCode(need.Kind) is null)
        {
            map.Problem($"unknown kind of evidence '{need.Kind}'; known: {string.Join(", ", Evidence.EvidenceKinds.All.Select(Evidence.EvidenceKinds.Code))}");
        }

        return Close(map, need);
    }

    private static MatchRule ReadMatch(YamlMap map) => Close(map, new MatchRule(map.Texts("positions"), map.Text("characteristic"), map.Number("maximumDifference")));

    private static StageParameters ReadParameters(YamlMap map) => Close(map, new StageParameters
    {
        ToleranceSource = map.OptionalText("toleranceSource"),
        Phases = map.Has("phases") ? [.. map.Maps("phases", "a phase").Select(ReadPhase)] : null,
        Mask = map.Has("mask") ? [.. map.Maps("mask", "a mask point").Select(m => Close(m, new MaskCorner(m.Number("frequencyHz"), m.Number("lowerDb"), m.Number("upperDb"))))] : null,
        MaskedEvidence = map.Has("maskedEvidence") ? map.Texts("maskedEvidence") : null,
        Numbers = map.OptionalMap("numbers")?.Numbers() ?? StageParameters.None.Numbers,
    });

    private static SoakPhaseParameters ReadPhase(YamlMap map) => Close(map, new SoakPhaseParameters(
        map.Text("name"), map.Number("temperatureC"), map.Number("temperatureToleranceK"), map.OptionalNumber("humidityPct"),
        map.OptionalNumber("humidityTolerancePct"), map.OptionalWhole("minDwellMinutes") ?? 0, map.OptionalNumber("maxRampKPerMinute"), map.OptionalWhole("maxGapMinutes")));

    private static T Close<T>(YamlMap map, T value)
    {
        map.NothingElse();
        return value;
    }
}
