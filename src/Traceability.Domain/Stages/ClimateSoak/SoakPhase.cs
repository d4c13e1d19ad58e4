using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>
/// What the route asks of one phase of a soak. The numbers belong to the route and name their edition there: none is built in.
/// </summary>
/// <param name="Name">The phase in words, as the findings will call it.</param>
/// <param name="TemperatureC">Set temperature, °C.</param>
/// <param name="TemperatureToleranceK">Allowed departure from it, ± K.</param>
/// <param name="HumidityPct">Set relative humidity, %; null when humidity is not judged.</param>
/// <param name="HumidityTolerancePct">Allowed departure from it, ± % RH; given together with the set humidity.</param>
/// <param name="MinDwellMinutes">Time in tolerance to be shown, counted from stabilisation, min.</param>
/// <param name="MaxRampKPerMinute">Fastest allowed change of temperature, K/min, as mean over the ramp window; null when not
/// judged.</param>
/// <param name="MaxGapMinutes">Longest step between two lines of the log that still counts as watched, min; null when not judged.</param>
/// <param name="SpecimenTimeConstantMinutes">
/// Time constant of the part, min, for the second half of the stabilisation rule: the part, taken as a first-order lag behind the
/// logged air, must be within 3 K of the set temperature. Null when the air alone is judged.
/// </param>
/// <param name="RampWindowMinutes">Averaging window of the ramp, min; at most 5 (IEC 60068-2-1 and -2-2, from memory).</param>
/// <param name="Excursions">What an excursion does to the dwell.</param>
public sealed record SoakPhase(
    string Name,
    double TemperatureC,
    double TemperatureToleranceK,
    double? HumidityPct,
    double? HumidityTolerancePct,
    double MinDwellMinutes,
    double? MaxRampKPerMinute = null,
    double? MaxGapMinutes = null,
    double? SpecimenTimeConstantMinutes = null,
    double RampWindowMinutes = 5,
    ExcursionRule Excursions = ExcursionRule.RestartsTheDwell
)
{
    internal void Check()
    {
        Require.TemperatureC(TemperatureC);
        Require.Positive(TemperatureToleranceK);
        Require.NotNegative(MinDwellMinutes);
        Require.Within(RampWindowMinutes, double.Epsilon, 5);
        if (HumidityPct is { } humidity)
            Require.Within(humidity, 0, 100);
        if (HumidityPct is not null)
            Require.Positive(HumidityTolerancePct ?? double.NaN, nameof(HumidityTolerancePct));
        if (MaxRampKPerMinute is { } ramp)
            Require.Positive(ramp);
        if (MaxGapMinutes is { } gap)
            Require.Positive(gap);
        if (SpecimenTimeConstantMinutes is { } lag)
            Require.Positive(lag);
    }
}

/// <summary>What an excursion does to the time already dwelt.</summary>
public enum ExcursionRule
{
    /// <summary>The count starts again at the next stabilisation. The way of the IEC 60068-2 tests, from memory.</summary>
    RestartsTheDwell,

    /// <summary>The time outside is taken off and named in the findings; the route has to say so expressly.</summary>
    IsSubtracted,
}
