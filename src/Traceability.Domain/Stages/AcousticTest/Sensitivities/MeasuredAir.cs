using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Stages.ClimateSoak;
using Traceability.Domain.Stages.Diaphragm;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.AcousticTest.Sensitivities;

/// <summary>
/// The air of the measurement against the reference conditions: entered <c>airTemperatureC</c>, <c>airPressureHpa</c>,
/// <c>airHumidityPct</c>.
/// </summary>
internal static class MeasuredAir
{
    private const string Level = "sourceLevelInAirDb";
    private const double MostWater = 0.055;
    private const double NearFieldHz = 100;

    /// <summary>The route's number: distance of the source, mm.</summary>
    public const string DistanceMm = "distanceMm";

    /// <summary>The route's numbers that it reads.</summary>
    public static readonly IReadOnlyList<MethodParameter> Parameters =
    [
        new(DistanceMm, "mm", "Distance of the source; with it, what the near field does to a gradient microphone is pointed out."),
    ];

    /// <summary>The entered characteristics that it looks at.</summary>
    public static readonly IReadOnlyList<string> Reads = ["airTemperatureC", "airPressureHpa", "airHumidityPct"];

    /// <summary>What it computes.</summary>
    public static readonly IReadOnlyList<MethodValue> Values = [new(Level, "dB")];

    /// <summary>The air as entered, or null when a part of it was left open or is none to measure in.</summary>
    public static Ambient? Entered(StageInput input) =>
        input.Value("airTemperatureC") is { } temperature and >= -20 and <= 50
        && input.Value("airPressureHpa") is { } pressure and >= 600 and <= 1100
        && input.Value("airHumidityPct") is { } humidity and >= 0 and <= 100
            ? new Ambient((double)temperature, 100 * (double)pressure, (double)humidity)
            : null;

    /// <summary>What the distance of the source does to a microphone that hears pressure gradient; advice, never a correction.</summary>
    public static AcousticPart AtDistance(StageInput input) =>
        input.Number(DistanceMm) is not { } distance
            ? AcousticPart.Nothing
            : AcousticPart.Note(
                AcousticTexts.NearFieldOfTheSource(
                    distance / 1000,
                    NearField.AxialRiseDb(
                        new(0.5),
                        NearFieldHz,
                        (double)distance / 1000,
                        SpeedOfSound.InDryAirMPerS(Ambient.Reference.TemperatureC)
                    ),
                    NearFieldHz
                )
            );

    public static string? HowComputed(string characteristic) =>
        characteristic == Level
            ? "20 lg(rho c / (rho0 c0)), dB: what the air of the moment does to the level of a source of constant volume velocity,"
                + " against 23 °C, 101 325 Pa and 50 %; rho from temperature, pressure and humidity, c after Cramer, J. Acoust. Soc."
                + " Am. 93 (1993) 2510, from memory. For information: a comparison with the reference microphone in the same air needs"
                + " no correction."
            : null;

    public static AcousticPart Of(StageInput input)
    {
        if (
            input.Value("airTemperatureC") is not { } temperature
            || input.Value("airPressureHpa") is not { } pressure
            || input.Value("airHumidityPct") is not { } humidity
        )
        {
            return AcousticPart.Nothing;
        }

        if (temperature is < -20 or > 50 || pressure is < 600 or > 1100 || humidity is < 0 or > 100)
        {
            return AcousticPart.Refused(AcousticTexts.AirIsNothingToMeasureIn(temperature, pressure, humidity));
        }

        // The formula for the speed of sound holds for little water in the air.
        var share = MoistAir.VapourPressureHpa((double)temperature, (double)humidity) / (double)pressure;
        var level =
            share > MostWater
                ? null
                : ComputedValue.Of(
                    Level,
                    AmbientCorrection.PressureLevelDb(new((double)temperature, 100 * (double)pressure, (double)humidity)),
                    2
                );
        return temperature is < 15 or > 35 || pressure is < 860 or > 1060 || humidity is < 25 or > 75
            ? new([level], [new(AcousticTexts.AirIsOutsideReferenceConditions(temperature, pressure, humidity), false)])
            : AcousticPart.Of(level);
    }
}
