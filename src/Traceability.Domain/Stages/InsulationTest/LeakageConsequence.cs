using Traceability.Domain.Stages.Capsule;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// What a measured insulation means for the microphone: the loss of sensitivity and the low corner with the leakage beside the bias
/// resistor, and the resistance at 20 °C. For information; the limit is on the resistance.
/// </summary>
/// <remarks>Route numbers <c>biasResistorGohm</c>; capacitance from the capsule's own stage. Sources: <see cref="Leakage"/>, <see cref="InsulationAtTemperature"/>.</remarks>
internal static class LeakageConsequence
{
    private const string Loss = "leakageLossDb";
    private const string Corner = "leakageCornerHz";
    private const string At20C = "insulationAt20CGohm";
    private const double ReferenceC = 20;

    /// <summary>The route's number for the bias resistor.</summary>
    public const string BiasResistor = "biasResistorGohm";

    /// <summary>What the capsule's own stage measured, of one side or of the front.</summary>
    public static readonly IReadOnlyList<string> ReadsEarlier = ["capacitancePf", "capacitanceFrontPf"];

    public static string? HowComputed(string characteristic) => characteristic switch
    {
        Loss => "20 lg(R / (R + Rb)), R the insulation after 60 s, Rb the bias resistor (route number biasResistorGohm): the leakage divides the polarising voltage, and the sensitivity goes with it. Source: voltage divider.",
        Corner => "1 / (2 pi (R || Rb) C), R the insulation after 60 s, Rb the bias resistor, C the capacitance measured before: the leakage raises the low corner. Source: first-order high-pass.",
        At20C => "R 0.5^((20 °C - t)/10 K), t the temperature at the test: halving per 10 K. For information only: surface leakage does not follow it. Source: IEEE 43, factor for thermoplastic insulation, from memory.",
        _ => null,
    };

    public static IEnumerable<ComputedValue?> Of(StageInput input, InsulationResistance insulation)
    {
        // Of "greater than" only the worst case can be said, and that is said as if it were the value.
        if (input.Number(BiasResistor) is { } biasGohm and > 0 && insulation.Ohm > 0)
        {
            var bias = (double)biasGohm * 1e9;
            yield return ComputedValue.Of(Loss, Leakage.SensitivityChangeDb(bias, insulation.Ohm), 3);
            var picofarads = input.Earlier(ReadsEarlier[0]) ?? input.Earlier(ReadsEarlier[1]);
            yield return picofarads is { } c and > 0 ? ComputedValue.Of(Corner, Leakage.CornerHz(bias, insulation.Ohm, (double)c * 1e-12), 2) : null;
        }

        if (input.Value("insulationTemperatureC") is { } temperatureC && temperatureC > -273 && !insulation.IsGreaterThan)
        {
            yield return ComputedValue.Of(At20C, InsulationAtTemperature.ReferredTo(insulation, (double)temperatureC, ReferenceC).Ohm / 1e9, 0);
        }
    }
}
