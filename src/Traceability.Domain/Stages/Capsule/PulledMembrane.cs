using MathNet.Numerics.RootFinding;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// The resting shape of a membrane pulled by an electrode, by integration of one curve that holds all of them.
/// </summary>
/// <remarks>
/// <para>
/// The problem u'' + u'/x = -L/(1-u)^2, u'(0) = u(1) = 0, u = w/d, x = r/a becomes with 1 - u = y(s)/y(S), s = S x the initial-value
/// problem y'' + y'/s = 1/y^2, y(0) = 1, y'(0) = 0. Each S gives one solution: L = S^2/y(S)^3, w0/d = 1 - 1/y(S). Going out along s, L
/// rises to its greatest value, the pull-in, and beyond it the solutions are unstable. No continuation, no guess.
/// </para>
/// <para>
/// Vibration about that shape, phi'' + phi'/x + (m + 2L/(1-u)^3) phi = 0 with phi(1) = 0, becomes phi'' + phi'/s + (m/S^2 + 2/y^3) phi = 0.
/// </para>
/// <para>
/// Integrated by the classical Runge-Kutta method of fourth order from a power series at s = 0.01; the step leaves less than 1e-12. Source:
/// Pelesko and Bernstein, Modeling MEMS and NEMS, for the problem and 0.789 (from memory). Checks: published values B2, B3, B4.
/// </para>
/// </remarks>
internal static class PulledMembrane
{
    private const double Start = 0.01;
    private const double Step = 1.0 / 512;
    private const int StepsToRim = 1024;
    private const double SafelyPastPullIn = 4;
    private const double Weak = 1e-4;

    /// <summary>State of the curve at s: the shape y, its slope, and a vibration phi with its slope.</summary>
    private readonly record struct State(double S, double Y, double Slope, double Phi, double PhiSlope)
    {
        public double Pull => S * S / (Y * Y * Y);

        /// <summary>Positive while L still rises with s: dL/ds has the sign of 2 y - 3 s y'.</summary>
        public double Rising => 2 * Y - 3 * S * Slope;
    }

    /// <summary>The fold: greatest L that has a resting place, and the centre deflection over the gap there.</summary>
    public static readonly (double Pull, double CentreShare) Fold = FindFold();

    /// <summary>Centre deflection over the gap, w0/d, for a pull below the fold. For a weak pull its series: L/4 + 3 L^2/32.</summary>
    public static double CentreShare(double pull) => pull < Weak ? pull / 4 + 3 * pull * pull / 32 : 1 - 1 / RestingPlace(pull).Y;

    /// <summary>
    /// f/f0 of the fundamental about the resting shape, sqrt(m)/j01, for a pull below the fold. For a weak pull the flat membrane.
    /// </summary>
    public static double FrequencyRatio(double pull)
    {
        const double square = PhysicalConstants.FirstZeroOfJ0 * PhysicalConstants.FirstZeroOfJ0;
        if (pull < Weak)
            return Math.Sqrt(1 - 2 * pull / square);
        var rim = RestingPlace(pull).S;
        // phi at the rim falls through zero as m grows; at the fold it does so at m = 0.
        if (PhiAtRim(0, rim) <= 0)
            return 0;
        return Math.Sqrt(Brent.FindRoot(m => PhiAtRim(m, rim), 0, square, 1e-12, 200) / square);
    }

    private static (double, double) FindFold()
    {
        var at = March(s => s.Rising <= 0);
        return (at.Pull, 1 - 1 / at.Y);
    }

    private static State RestingPlace(double pull) => March(s => s.Pull >= pull || s.Rising <= 0);

    /// <summary>Goes along the curve until a condition holds, then halves the last step until it stops changing.</summary>
    private static State March(Func<State, bool> reached)
    {
        var state = Begin(Start, 0);
        for (var next = Advance(state, Step, 0); state.S < SafelyPastPullIn; state = next, next = Advance(state, Step, 0))
        {
            if (!reached(next))
                continue;
            var (low, high) = (0.0, Step);
            while (high - low > 1e-16 * state.S && (low + high) / 2 is var middle && middle > low && middle < high)
            {
                if (reached(Advance(state, middle, 0)))
                    high = middle;
                else
                    low = middle;
            }
            return Advance(state, high, 0);
        }
        throw new InvalidOperationException("the curve of resting shapes ended before the pull-in");
    }

    /// <summary>
    /// phi(1) for a trial m. The step follows the rim, so that a weak pull, whose rim lies close by, is resolved as finely as a strong
    /// one.
    /// </summary>
    private static double PhiAtRim(double m, double rim)
    {
        var lambda = m / (rim * rim);
        var step = rim / StepsToRim;
        var state = Begin(step, lambda);
        for (var i = 1; i < StepsToRim; i++)
            state = Advance(state, step, lambda);
        return state.Phi;
    }

    /// <summary>Power series about s = 0: y = 1 + s^2/4 - s^4/32 + s^6/144, phi = 1 + p s^2 + q s^4.</summary>
    private static State Begin(double s, double lambda)
    {
        var square = s * s;
        var p = -(lambda + 2) / 4;
        var q = (1.5 - (lambda + 2) * p) / 16;
        return new(
            s,
            1 + square * (1.0 / 4 + square * (-1.0 / 32 + square / 144)),
            s * (1.0 / 2 + square * (-1.0 / 8 + square / 24)),
            1 + square * (p + q * square),
            s * (2 * p + 4 * q * square)
        );
    }

    private static State Advance(State from, double step, double lambda)
    {
        var a = Change(from, lambda);
        var b = Change(Add(from, a, step / 2), lambda);
        var c = Change(Add(from, b, step / 2), lambda);
        var d = Change(Add(from, c, step), lambda);
        return new(
            from.S + step,
            from.Y + step / 6 * (a.Y + 2 * b.Y + 2 * c.Y + d.Y),
            from.Slope + step / 6 * (a.Slope + 2 * b.Slope + 2 * c.Slope + d.Slope),
            from.Phi + step / 6 * (a.Phi + 2 * b.Phi + 2 * c.Phi + d.Phi),
            from.PhiSlope + step / 6 * (a.PhiSlope + 2 * b.PhiSlope + 2 * c.PhiSlope + d.PhiSlope)
        );
    }

    private static State Change(State at, double lambda)
    {
        var square = at.Y * at.Y;
        return new(1, at.Slope, 1 / square - at.Slope / at.S, at.PhiSlope, -at.PhiSlope / at.S - (lambda + 2 / (square * at.Y)) * at.Phi);
    }

    private static State Add(State from, State change, double step) =>
        new(
            from.S + step,
            from.Y + step * change.Y,
            from.Slope + step * change.Slope,
            from.Phi + step * change.Phi,
            from.PhiSlope + step * change.PhiSlope
        );
}
