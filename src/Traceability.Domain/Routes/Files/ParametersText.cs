namespace Traceability.Domain.Routes.Files;

/// <summary>Reads what a stage's method takes from the route file.</summary>
internal static class ParametersText
{
    public static StageParameters Read(YamlMap map) => map.Close(new StageParameters
    {
        ToleranceSource = map.OptionalText("toleranceSource"),
        Phases = map.Has("phases") ? [.. map.Maps("phases", "a phase").Select(ReadPhase)] : null,
        Mask = map.Has("mask") ? [.. map.Maps("mask", "a mask point").Select(m => m.Close(new MaskCorner(m.Number("frequencyHz"), m.Number("lowerDb"), m.Number("upperDb"))))] : null,
        ReferenceCurve = map.Has("referenceCurve")
            ? [.. map.Maps("referenceCurve", "a point of the reference curve").Select(m => m.Close(new CurvePoint(m.Number("frequencyHz"), m.Number("levelDb"))))]
            : null,
        MaskedEvidence = map.Has("maskedEvidence") ? map.Texts("maskedEvidence") : null,
        Numbers = map.OptionalMap("numbers")?.Numbers() ?? StageParameters.None.Numbers,
    });

    private static SoakPhaseParameters ReadPhase(YamlMap map) => map.Close(new SoakPhaseParameters(
        map.Text("name"), map.Number("temperatureC"), map.Number("temperatureToleranceK"), map.OptionalNumber("humidityPct"), map.OptionalNumber("humidityTolerancePct"),
        map.Whole("minDwellMinutes"), map.OptionalNumber("maxRampKPerMinute"), map.OptionalWhole("maxGapMinutes"))
    {
        PartTimeConstantMinutes = map.OptionalNumber("partTimeConstantMinutes"),
        RampWindowMinutes = map.OptionalNumber("rampWindowMinutes"),
        ExcursionsAreSubtracted = map.Flag("excursionsAreSubtracted", false),
        MustStayDry = map.Flag("mustStayDry", false),
    });
}
