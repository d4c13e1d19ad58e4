using Traceability.Domain.Stages.Capsule;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// What a measured insulation means for the microphone: the loss of sensitivity and the low corner with the leakage beside the bias
/// resistor. For information; the limit is on the resistance.
/// </summary>
/// <remarks>Route numbers <c>biasResistorGohm</c>; capacitance from the capsule's own stage. Source: <see cref="Leakage"/>.</remarks>
internal static class LeakageConsequence
{
    private const string Loss = "leakageLossDb";
    private const string Corner = "leakageCornerHz";

    /// <summary>The route's number for the bias resistor.</summary>
    public const string BiasResistor = "biasResistorGohm";

    /// <summary>What it computes.</summary>
    public static readonly IReadOnlyList<MethodValue> Values = [new(Loss, "dB"), new(Corner, "Hz")];

    /// <summary>Where its formulas come from.</summary>
    public static readonly IReadOnlyList<string> Sources = ["Leakage beside the bias resistor: voltage divider and first-order high-pass."];

    /// <summary>What the capsule's own stage measured, of one side or of the front.</summary>
    public static readonly IReadOnlyList<string> ReadsEarlier = ["capacitancePf", "capacitanceFrontPf"];

    public static string? HowComputed(string characteristic) =>
        characteristic switch
        {
            Loss => "20 lg(R / (R + Rb)), R the insulation after 60 s, Rb the bias resistor (route number biasResistorGohm): the leakage"
                + " divides the polarising voltage, and the sensitivity goes with it. Source: voltage divider.",
            Corner => "1 / (2 pi (R || Rb) C), R the insulation after 60 s, Rb the bias resistor, C the capacitance measured before: the"
                + " leakage raises the low corner. Source: first-order high-pass.",
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
            yield return picofarads is { } c and > 0
                ? ComputedValue.Of(Corner, Leakage.CornerHz(bias, insulation.Ohm, (double)c * 1e-12), 2)
                : null;
        }
    }
}
