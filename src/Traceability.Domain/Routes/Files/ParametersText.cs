namespace Traceability.Domain.Routes.Files;

/// <summary>Reads what a stage's method takes from the route file.</summary>
internal static class ParametersText
{
    /// <summary>Keys that mean something to some methods only.</summary>
    private static readonly string[] OfOneMethod = ["phases", "mask", "referenceCurve", "maskedEvidence", "terminals"];

    /// <summary>
    /// Reads them; what the method does not read is a mistake at its own line. Null for a method that is not known, or one that was checked
    /// when the route was loaded.
    /// </summary>
    public static StageParameters Read(YamlMap map, MethodRequirements? method)
    {
        var numbers = map.OptionalMap("numbers");
        var parameters = map.Close(Read(map, numbers));
        if (method is not null)
        {
            CheckRead(map, numbers, method, parameters);
        }

        return parameters;
    }

    private static void CheckRead(YamlMap map, YamlMap? numbers, MethodRequirements method, StageParameters parameters)
    {
        foreach (var key in OfOneMethod.Where(k => map.Has(k) && !method.Parameters.Contains(k)))
        {
            map.ProblemAt(key, RouteTexts.MethodReadsNo(method.Name, key));
        }

        var known = method.Numbers.Concat(method.SignedNumbers).Order(StringComparer.Ordinal).ToList();
        foreach (var (name, value) in parameters.Numbers)
        {
            if (!known.Contains(name))
            {
                numbers!.ProblemAt(
                    name,
                    known.Count == 0
                        ? RouteTexts.MethodReadsNoNumbers(method.Name, name)
                        : RouteTexts.MethodReadsNoSuchNumber(method.Name, name, string.Join(", ", known))
                );
            }
            else if (value <= 0 && method.Numbers.Contains(name))
            {
                numbers!.ProblemAt(name, RouteTexts.NumberMustBeAboveZero(name));
            }
        }
    }

    private static StageParameters Read(YamlMap map, YamlMap? numbers) =>
        new()
        {
            ToleranceSource = map.OptionalText("toleranceSource"),
            Phases = map.Has("phases") ? [.. map.Maps("phases", RouteTexts.APhase).Select(ReadPhase)] : null,
            Mask = map.Has("mask")
                ?
                [
                    .. map.Maps("mask", RouteTexts.AMaskPoint)
                        .Select(m => m.Close(new MaskCorner(m.Number("frequencyHz"), m.Number("lowerDb"), m.Number("upperDb")))),
                ]
                : null,
            ReferenceCurve = map.Has("referenceCurve")
                ?
                [
                    .. map.Maps("referenceCurve", RouteTexts.APointOfTheReferenceCurve)
                        .Select(m => m.Close(new CurvePoint(m.Number("frequencyHz"), m.Number("levelDb")))),
                ]
                : null,
            MaskedEvidence = map.Has("maskedEvidence") ? map.Texts("maskedEvidence") : null,
            Terminals = map.Has("terminals")
                ?
                [
                    .. map.Maps("terminals", RouteTexts.ATestConnection)
                        .Select(m => m.Close(new TestConnection(m.Text("voltage"), m.Texts("tied"), m.Texts("against")))),
                ]
                : null,
            Numbers = numbers?.Numbers() ?? StageParameters.None.Numbers,
        };

    private static SoakPhaseParameters ReadPhase(YamlMap map) =>
        map.Close(
            new SoakPhaseParameters(
                map.Text("name"),
                map.Number("temperatureC"),
                map.Number("temperatureToleranceK"),
                map.OptionalNumber("humidityPct"),
                map.OptionalNumber("humidityTolerancePct"),
                map.Whole("minDwellMinutes"),
                map.OptionalNumber("maxRampKPerMinute"),
                map.OptionalWhole("maxGapMinutes")
            )
            {
                PartTimeConstantMinutes = map.OptionalNumber("partTimeConstantMinutes"),
                RampWindowMinutes = map.OptionalNumber("rampWindowMinutes"),
                ExcursionsAreSubtracted = map.Flag("excursionsAreSubtracted", false),
                MustStayDry = map.Flag("mustStayDry", false),
            }
        );
}
