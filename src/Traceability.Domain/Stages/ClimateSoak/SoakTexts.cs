using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>What a climate soak finds, and what it cannot judge. Their words are in <c>SoakTexts.resx</c>.</summary>
internal static class SoakTexts
{
    private static readonly TextFile Words = new(typeof(SoakTexts));

    internal static string SampleIsNoClimate(int number, double temperatureC, double? humidityPct) =>
        Words.Say([number, temperatureC, humidityPct]);

    internal static string SampleAtIsNotLater(int number, string at, string at2) => Words.Say([number, at, at2]);

    internal static string LogHasTooFewSamples(int usableCount) => Words.Say([usableCount]);

    internal static string SamplesCarryNoTemperature(int empty) => Words.Say([empty]);

    internal static string SamplesRepeatTheOneBefore(int repeated) => Words.Say([repeated]);

    internal static string GapWithoutAReading(string at, double step, double? maxGapMinutes) => Words.Say([at, step, maxGapMinutes]);

    internal static string NeverStabilised(string phase) => Words.Say([phase]);

    internal static string DwellIsTooShort(string phase, double minutes, double minDwellMinutes) =>
        Words.Say([phase, minutes, minDwellMinutes]);

    internal static string RampIsTooSteep(
        string phase,
        double kPerMinute,
        double rampWindowMinutes,
        string since,
        double? maxRampKPerMinute
    ) => Words.Say([phase, kPerMinute, rampWindowMinutes, since, maxRampKPerMinute]);

    internal static string LogLeavesToleranceAtTheEnd => Words.Say();

    internal static string ExcursionsAreSubtracted(int excursionCount) => Words.Say([excursionCount]);

    internal static string NoLongestGapIsStated(double widestGapMinutes) => Words.Say([widestGapMinutes]);

    internal static string StepsAreWiderThanTheRampWindow(double widestGapMinutes, double rampWindowMinutes) =>
        Words.Say([widestGapMinutes, rampWindowMinutes]);

    internal static string SoakNeedsPhases => Words.Say();
    internal static string SoakNeedsItsLog => Words.Say();
    internal static string SoakNeedsToleranceSource => Words.Say();

    internal static string ClimateLogCannotBeRead(string problems) => Words.Say([problems]);

    internal static string LogBelongsToAnotherRun(
        DateTimeOffset at,
        DateTimeOffset at2,
        DateTimeOffset openedAt,
        DateTimeOffset closedAt
    ) => Words.Say([at, at2, openedAt, closedAt]);

    internal static string OnlyTheRunCounts(DateTimeOffset openedAt, DateTimeOffset closedAt, int counted, int lines) =>
        Words.Say([openedAt, closedAt, counted, lines]);

    internal static string ClimateLogCannotBeJudged(string problem) => Words.Say([problem]);

    internal static string WaterCondensed(string phase, string since, string until, string result) =>
        Words.Say([phase, since, until, result]);

    internal static string WhileTheClimateChanged => Words.Say();
    internal static string DuringTheDwell => Words.Say();
    internal static string WhileTheClimateChangedAndIntoTheDwell => Words.Say();

    internal static string SaturatedPhaseIsTheWorkshopsOwn(string phase) => Words.Say([phase]);

    internal static string PhaseOfCannotBe(string phase, string? paramName, object? actualValue) =>
        Words.Say([phase, paramName, actualValue]);

    internal static string TemperatureIsOutside(string at, double temperatureC, double phaseTemperatureC, double temperatureToleranceK) =>
        Words.Say([at, temperatureC, phaseTemperatureC, temperatureToleranceK]);

    internal static string NoHumidityReading(string at) => Words.Say([at]);

    internal static string HumidityIsOutside(string at, double? humidityPct, double? phaseHumidityPct, double? humidityTolerancePct) =>
        Words.Say([at, humidityPct, phaseHumidityPct, humidityTolerancePct]);
}
