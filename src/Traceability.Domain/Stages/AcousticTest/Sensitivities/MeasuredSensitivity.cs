using Traceability.Domain.Routes;
using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.AcousticTest.Sensitivities;

/// <summary>
/// Sensitivities by comparison with the reference microphone, their levels, and the calibration values stored in the unit against those
/// measured. A route tells what it wants by names: <c>sensitivityFrontMvPa</c> comes from the entered <c>outputFrontMv</c> and
/// <c>referenceOutputMv</c>; <c>sensitivityFrontDbvPa</c> is its level; <c>calibrationErrorOmniDb</c> compares the entered
/// <c>calibrationOmniDb</c> with <c>sensitivityOmniMvPa</c> and its nominal value.
/// </summary>
internal static class MeasuredSensitivity
{
    private const string ReferenceOutput = "referenceOutputMv";
    private const string ReferenceSensitivity = "referenceSensitivityMvPa";
    private const string Sensitive = "ensitivity";
    private const string CalibrationError = "calibrationError";
    private const string PerKelvin = "referenceTemperatureDbPerK";
    private const string PerKilopascal = "referencePressureDbPerKpa";
    private const string Correction = "referenceAirCorrectionDb";

    /// <summary>The route's numbers that it reads; the coefficients of the reference microphone may have either sign.</summary>
    public static readonly IReadOnlyList<MethodParameter> Parameters =
    [
        new(ReferenceSensitivity, "mV/Pa", "Sensitivity of the reference microphone, when its calibration does not state it."),
        new(PerKelvin, "dB/K", "What temperature does to it, from its calibration, else this; nothing when neither says.")
        {
            Lower = null,
            MayBeZeroOrBelow = true,
        },
        new(PerKilopascal, "dB/kPa", "What air pressure does to it, from its calibration, else this; nothing when neither says.")
        {
            Lower = null,
            MayBeZeroOrBelow = true,
        },
    ];

    /// <summary>The entered characteristics that it looks at; {pattern} is omni, cardioid, front ...</summary>
    public static readonly IReadOnlyList<string> Reads = [ReferenceOutput, "output{pattern}Mv", "calibration{pattern}Db"];

    /// <summary>What it computes.</summary>
    public static readonly IReadOnlyList<MethodValue> Values =
    [
        new("sensitivity{pattern}MvPa", "mV/Pa"),
        new("sensitivity{pattern}DbvPa", "dBV/Pa"),
        new("calibrationError{pattern}Db", "dB"),
        new(Correction, "dB"),
    ];

    public static string? HowComputed(string characteristic) =>
        characteristic switch
        {
            _ when IsSensitivity(characteristic) =>
                $"S_ref U / U_ref in mV/Pa: U ({OutputOf(characteristic)}) output of the microphone, mV; U_ref ({ReferenceOutput}) that"
                    + $" of the reference microphone at the same place and level, mV; S_ref ({ReferenceSensitivity}) its sensitivity"
                    + " from its calibration, else from the route. As level: L = L_ref + 20 lg(U / U_ref) + correction. Both are"
                    + " measured in the same air and sound;"
                    + " what remains is the reference microphone's own change with the air, where its calibration states it."
                    + " Comparison in the free field, IEC 61094-8, from memory.",
            Correction =>
                "kT (t - 23 °C) + kP (p - 101.325 kPa), dB: what the air of the moment does to the reference microphone's sensitivity;"
                    + " kT and kP its coefficients (referenceTemperatureDbPerK, referencePressureDbPerKpa) from its calibration. Added"
                    + " to L_ref. IEC 61094-4 states such coefficients, from memory.",
            _ when IsLevel(characteristic) =>
                $"20 lg({SensitivityOfLevel(characteristic)} / 1000 mV/Pa), dB re 1 V/Pa. IEC 60268-4, from memory.",
            _ when IsCalibrationError(characteristic) =>
                $"{StoredOf(characteristic)} - 20 lg(S / S_nominal), dB: the value stored in the unit less the one measured now; S"
                    + $" ({SensitivityOfError(characteristic)}) in mV/Pa, S_nominal its nominal value. The workshop's own definition.",
            _ => null,
        };

    public static IEnumerable<string> ProblemsWith(Stage stage) =>
        stage
            .Characteristics.Where(c => !c.Entered)
            .SelectMany(c =>
                c.Name switch
                {
                    var name when IsSensitivity(name) => Missing(stage, c, OutputOf(name), ReferenceOutput),
                    var name when IsLevel(name) => Missing(stage, c, SensitivityOfLevel(name)),
                    var name when IsCalibrationError(name) => stage.Characteristic(SensitivityOfError(name)) is { Nominal: > 0 }
                        ? Missing(stage, c, StoredOf(name))
                        : [AcousticTexts.ComparesWithTheNominalValueOf(name, SensitivityOfError(name))],
                    _ => [],
                }
            );

    public static AcousticPart Of(StageInput input)
    {
        var computed = input.Stage.Characteristics.Where(c => !c.Entered).ToList();
        var (correctionDb, missingAir) = CorrectionOf(input);
        var sensitivities = new Dictionary<string, double>();
        foreach (var c in input.Stage.Characteristics.Where(c => c.Entered && IsSensitivity(c.Name) && input.Value(c.Name) > 0))
        {
            sensitivities[c.Name] = (double)input.Entered[c.Name];
        }

        foreach (var name in computed.Select(c => c.Name).Where(IsSensitivity))
        {
            if (input.Value(OutputOf(name)) is not { } output || input.Value(ReferenceOutput) is not { } reference)
            {
                continue;
            }

            if (output <= 0 || reference <= 0)
            {
                return AcousticPart.Refused(AcousticTexts.OutputsGiveNoSensitivity(output, reference));
            }

            if (input.Constant(ReferenceSensitivity) is not ({ } known and > 0))
            {
                return AcousticPart.Refused(AcousticTexts.SensitivityOfTheReferenceIsNotKnown(ReferenceSensitivity));
            }

            sensitivities[name] = Sensitivity.MillivoltPerPascal(
                ComparisonCalibration.LevelDb(
                    Sensitivity.LevelDbRe1VPerPa((double)known),
                    (double)reference / 1000,
                    (double)output / 1000,
                    correctionDb ?? 0
                )
            );
        }

        var findings = sensitivities
            .Keys.Where(n => computed.Exists(c => c.Name == n))
            .SelectMany(n => BothValues(input, n, sensitivities[n], correctionDb))
            .Concat(missingAir)
            .ToList();
        return new(
            [
                ComputedValue.Of(Correction, correctionDb, 3),
                .. sensitivities.Select(s => ComputedValue.Of(s.Key, s.Value, 2)),
                .. computed
                    .Select(c => c.Name)
                    .Where(n => IsLevel(n) && sensitivities.ContainsKey(SensitivityOfLevel(n)))
                    .Select(n => ComputedValue.Of(n, Sensitivity.LevelDbRe1VPerPa(sensitivities[SensitivityOfLevel(n)]), 2)),
                .. computed
                    .Select(c => c.Name)
                    .Where(n => IsCalibrationError(n) && sensitivities.ContainsKey(SensitivityOfError(n)))
                    .Select(n => Error(input, n, sensitivities[SensitivityOfError(n)])),
            ],
            findings
        );
    }

    /// <summary>
    /// The sensitivities that the stage states, V/Pa, by the pattern or side in their names ("Omni" of <c>sensitivityOmniMvPa</c>); noise
    /// is referred to that of its own pattern.
    /// </summary>
    public static IReadOnlyDictionary<string, double> VPerPaByPattern(StageInput input, IReadOnlyList<ComputedValue?> computed) =>
        input
            .Stage.Characteristics.Select(c => c.Name)
            .Where(IsSensitivity)
            .Select(name =>
                (
                    Pattern: PatternOfSensitivity(name),
                    Value: computed.FirstOrDefault(v => v?.Characteristic == name)?.Value ?? input.Value(name) ?? 0
                )
            )
            .Where(s => s.Value > 0)
            .GroupBy(s => s.Pattern)
            .ToDictionary(s => s.Key, s => (double)s.First().Value / 1000);

    /// <summary>The patterns or sides of which the stage states a sensitivity.</summary>
    public static IReadOnlyList<string> PatternsOf(Stage stage) =>
        [.. stage.Characteristics.Select(c => c.Name).Where(IsSensitivity).Select(PatternOfSensitivity).Distinct()];

    /// <summary>
    /// The correction of the reference microphone for the air, dB; null when it states none. Where the air was not entered, a word about
    /// that.
    /// </summary>
    private static (double? Db, IEnumerable<StageFinding> MissingAir) CorrectionOf(StageInput input)
    {
        if (input.Constant(PerKelvin) is null && input.Constant(PerKilopascal) is null)
        {
            return (null, []);
        }

        return MeasuredAir.Entered(input) is { } air
            ? (
                ComparisonCalibration.ReferenceInAirDb(
                    (double)(input.Constant(PerKelvin) ?? 0),
                    (double)(input.Constant(PerKilopascal) ?? 0),
                    air
                ),
                []
            )
            : (null, [new(AcousticTexts.NoAirToCorrectTheReferenceFor, false)]);
    }

    private static IEnumerable<StageFinding> BothValues(StageInput input, string name, double corrected, double? correctionDb)
    {
        if (correctionDb is { } db)
        {
            var label = input.Stage.Characteristic(name)!.Label;
            yield return new(AcousticTexts.WithAndWithoutCorrection(label, corrected * Math.Pow(10, -db / 20), corrected, db), false);
        }
    }

    private static ComputedValue? Error(StageInput input, string name, double millivoltPerPascal) =>
        input.Value(StoredOf(name)) is { } stored && input.Stage.Characteristic(SensitivityOfError(name))?.Nominal is ({ } nominal and > 0)
            ? ComputedValue.Of(name, (double)stored - 20 * Math.Log10(millivoltPerPascal / (double)nominal), 2)
            : null;

    private static IEnumerable<string> Missing(Stage stage, Characteristic of, params string[] names) =>
        names
            .Where(n => stage.Characteristic(n) is not { } c || (of.Required && !c.Required))
            .Select(n => AcousticTexts.IsComputedFromAnother(of.Name, n));

    private static bool IsSensitivity(string name) =>
        name.Contains(Sensitive, StringComparison.Ordinal)
        && name.EndsWith("MvPa", StringComparison.Ordinal)
        && name != ReferenceSensitivity;

    private static string PatternOfSensitivity(string name) =>
        name[(name.IndexOf(Sensitive, StringComparison.Ordinal) + Sensitive.Length)..^"MvPa".Length];

    private static bool IsLevel(string name) =>
        name.Contains(Sensitive, StringComparison.Ordinal) && name.EndsWith("DbvPa", StringComparison.Ordinal);

    private static bool IsCalibrationError(string name) =>
        name.StartsWith(CalibrationError, StringComparison.Ordinal) && name.EndsWith("Db", StringComparison.Ordinal);

    private static string OutputOf(string sensitivity) =>
        sensitivity[..^"Pa".Length]
            .Replace("sensitivity", "output", StringComparison.Ordinal)
            .Replace("Sensitivity", "Output", StringComparison.Ordinal);

    private static string SensitivityOfLevel(string level) => level[..^"DbvPa".Length] + "MvPa";

    private static string PatternOf(string error) => error[CalibrationError.Length..^"Db".Length];

    private static string StoredOf(string error) => $"calibration{PatternOf(error)}Db";

    private static string SensitivityOfError(string error) => $"sensitivity{PatternOf(error)}MvPa";
}
