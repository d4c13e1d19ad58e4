using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>Proof of the tester with a resistor of known value.</summary>
/// <param name="RelativeError">R_measured / R_reference - 1, without unit.</param>
/// <param name="Passes">Whether its amount is within the limit; the limit itself passes.</param>
/// <remarks>Checks: published values C6.</remarks>
public readonly record struct ReferenceResistorCheck(double RelativeError, bool Passes)
{
    /// <summary>One check.</summary>
    /// <param name="referenceOhm">Value of the resistor, ohm; greater than zero.</param>
    /// <param name="measuredOhm">Reading, ohm; greater than zero.</param>
    /// <param name="relativeLimit">Allowed relative error; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static ReferenceResistorCheck Of(double referenceOhm, double measuredOhm, double relativeLimit)
    {
        var error = Require.Positive(measuredOhm) / Require.Positive(referenceOhm) - 1;
        return new(error, Math.Abs(error) <= Require.Positive(relativeLimit) + 1e-12);
    }

    /// <summary>Whether a series of readings counts: the check before and the one after it both passed.</summary>
    /// <param name="before">Check before the series.</param>
    /// <param name="after">Check after the series; null when there is none yet.</param>
    public static bool SeriesCounts(ReferenceResistorCheck before, ReferenceResistorCheck? after) =>
        before.Passes && after is { Passes: true };
}
