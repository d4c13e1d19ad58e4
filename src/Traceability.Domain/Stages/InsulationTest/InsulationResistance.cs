using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>An insulation resistance, or the statement that it is greater than a value.</summary>
/// <param name="Ohm">The resistance, or the value it is greater than, ohm.</param>
/// <param name="IsGreaterThan">True for "greater than": the value is a lower bound and never averaged, trended or corrected as a
/// number.</param>
public readonly record struct InsulationResistance(double Ohm, bool IsGreaterThan)
{
    /// <summary>R = V / I, ohm.</summary>
    /// <param name="voltageV">V, test voltage, V; greater than zero.</param>
    /// <param name="currentA">I, current after the electrification time, A; greater than zero.</param>
    /// <param name="currentFloorA">
    /// Smallest current the tester tells from none, A; below it the result is "greater than V over floor". Zero when it is not known.
    /// </param>
    /// <remarks>Source: Ohm's law. Checks: published values C1, <c>InsulationTests</c>.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A voltage, or a current above the floor, that is not positive, or NaN.</exception>
    public static InsulationResistance FromVoltageAndCurrent(double voltageV, double currentA, double currentFloorA = 0)
    {
        Require.Positive(voltageV);
        Require.NotNegative(currentFloorA);
        if (currentFloorA > 0 && Require.NotNegative(currentA) <= currentFloorA)
            return new(voltageV / currentFloorA, true);
        return new(voltageV / Require.Positive(currentA), false);
    }

    /// <summary>Takes off the protection resistor in series: R_x = R - R_s.</summary>
    /// <param name="seriesOhm">R_s, ohm; not negative.</param>
    /// <remarks>
    /// Below R_s nothing is left: a short circuit reads as zero, not as a negative resistance. Checks: published values C5.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A negative resistor, or NaN.</exception>
    public InsulationResistance WithoutSeries(double seriesOhm) => this with { Ohm = Math.Max(0, Ohm - Require.NotNegative(seriesOhm)) };

    /// <summary>
    /// Takes off the leakage of the empty fixture in parallel: R_x = 1 / (1/R_m - 1/R_f). With R_m at or above R_f the result is
    /// "greater than R_f".
    /// </summary>
    /// <param name="fixtureOhm">R_f, resistance of the empty fixture, ohm; greater than zero.</param>
    /// <remarks>
    /// Meaningful while R_f is some five times R_x or more, see <see cref="FixtureIsGoodEnough"/>. Checks: published value C7-001.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A fixture resistance that is not positive, or NaN.</exception>
    public InsulationResistance WithoutFixture(double fixtureOhm)
    {
        Require.Positive(fixtureOhm);
        if (Ohm >= fixtureOhm)
            return new(fixtureOhm, true);
        return Ohm == 0 ? this : this with { Ohm = 1 / (1 / Ohm - 1 / fixtureOhm) };
    }

    /// <summary>Whether the empty fixture is at least five times as good as the part. Common practice, no source.</summary>
    /// <param name="fixtureOhm">R_f, ohm; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A fixture resistance that is not positive, or NaN.</exception>
    public bool FixtureIsGoodEnough(double fixtureOhm) => Require.Positive(fixtureOhm) >= 5 * Ohm;

    /// <summary>Whether a lower limit is shown to be met. "Greater than" a value below the limit shows nothing: then null.</summary>
    /// <param name="limitOhm">Lower limit, ohm; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit that is not positive, or NaN.</exception>
    public bool? IsAtLeast(double limitOhm) =>
        Ohm >= Require.Positive(limitOhm) ? true
        : IsGreaterThan ? null
        : false;
}
