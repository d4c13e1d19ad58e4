using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.BoardSet;

/// <summary>
/// A phantom supply as the microphone sees it: a voltage behind two equal resistors in parallel.
/// </summary>
/// <param name="NominalV">Voltage of the source, V.</param>
/// <param name="ToleranceV">Its tolerance, ± V.</param>
/// <param name="LegOhm">Resistor in each leg, ohm.</param>
/// <param name="MaxCurrentA">Greatest current of the microphone, A.</param>
/// <remarks>
/// Source: IEC 61938, from memory (the tolerance of P12 doubtful). The legs are matched to 0.4 %. Checks: published values E14,
/// <c>PhantomSupplyTests</c>.
/// </remarks>
public sealed record PhantomSupply(double NominalV, double ToleranceV, double LegOhm, double MaxCurrentA)
{
    /// <summary>48 V ± 4 V behind 6.8 kilohm, 10 mA.</summary>
    public static PhantomSupply P48 { get; } = new(48, 4, 6800, 0.010);

    /// <summary>24 V ± 4 V behind 1.2 kilohm, 10 mA.</summary>
    public static PhantomSupply P24 { get; } = new(24, 4, 1200, 0.010);

    /// <summary>12 V ± 1 V behind 680 ohm, 15 mA.</summary>
    public static PhantomSupply P12 { get; } = new(12, 1, 680, 0.015);

    /// <summary>Resistance of both legs in parallel, ohm.</summary>
    public double SourceOhm => LegOhm / 2;

    /// <summary>Voltage left at the microphone, V: V - I R.</summary>
    /// <param name="currentA">I, supply current, A; from zero to the short-circuit current.</param>
    /// <exception cref="ArgumentOutOfRangeException">More current than the source can give, a negative one, or NaN.</exception>
    public double TerminalV(double currentA) => NominalV - SourceOhm * Require.Within(currentA, 0, ShortCircuitA(NominalV));

    /// <summary>Supply current from the voltage read at the microphone, A: (V - U) / R.</summary>
    /// <param name="terminalV">U, V, at the microphone; zero to the source's.</param>
    /// <param name="sourceV">V, V, read without load.</param>
    /// <exception cref="ArgumentOutOfRangeException">A voltage outside these ranges, or NaN.</exception>
    public double CurrentA(double terminalV, double sourceV) =>
        (Require.Positive(sourceV) - Require.Within(terminalV, 0, sourceV)) / SourceOhm;

    /// <summary>Current into a short circuit of both legs, A: V / R.</summary>
    /// <param name="sourceV">V, V; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A voltage that is not positive, or NaN.</exception>
    public double ShortCircuitA(double sourceV) => Require.Positive(sourceV) / SourceOhm;

    /// <summary>Greatest power a microphone can take, W: V^2 / (4 R), at half the voltage.</summary>
    public double GreatestPowerW => NominalV * NominalV / (4 * SourceOhm);

    /// <summary>Whether a supply current is allowed.</summary>
    /// <param name="currentA">I, A; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative current, or NaN.</exception>
    public bool Allows(double currentA) => Require.NotNegative(currentA) <= MaxCurrentA;
}
