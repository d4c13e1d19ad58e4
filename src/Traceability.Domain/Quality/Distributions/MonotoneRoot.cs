namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// Finds where a continuous function crosses zero between two points of opposite sign, to the last digits of a double.
/// </summary>
/// <remarks>
/// Method: T. R. Chandrupatla, A new hybrid quadratic/bisection algorithm, Advances in Engineering Software 28 (1997): inverse
/// quadratic interpolation where it is safe, bisection where it is not, so it cannot fail on a bracketed root. Own code because the
/// library's root finder stops by a test on the function value, which loses digits for steep distribution functions. Where the bracket
/// spans powers of ten, it is halved in its logarithm: a quantile may be 1e-200, which no number of arithmetic halvings of a double
/// reaches. Checked by <c>DistributionsAgainstTables</c> through every quantile.
/// </remarks>
public static class MonotoneRoot
{
    private const int MostSteps = 300;
    private const double RelativeStep = 4 * 2.220446049250313e-16;

    /// <summary>So many halvings are arithmetic in any case: most roots are no powers of ten away.</summary>
    private const int ArithmeticSteps = 8;

    private const double Decades = 16;

    /// <summary>The root of <paramref name="function"/> in [<paramref name="from"/>, <paramref name="to"/>].</summary>
    /// <param name="function">A continuous function.</param>
    /// <param name="from">One end of the bracket.</param>
    /// <param name="to">The other end; the function must have the opposite sign there, or be zero at one end.</param>
    /// <exception cref="ArgumentException">The function has the same sign at both ends.</exception>
    public static double Find(Func<double, double> function, double from, double to)
    {
        double a = to,
            b = from,
            fa = function(a),
            fb = function(b);
        if (fa == 0)
        {
            return a;
        }

        if (fb == 0)
        {
            return b;
        }

        if (Math.Sign(fa) == Math.Sign(fb))
        {
            throw new ArgumentException("The function has the same sign at both ends of the bracket.", nameof(function));
        }

        double x = Middle(a, b, 0);
        for (int step = 1; step <= MostSteps; step++)
        {
            double fx = function(x),
                c,
                fc;
            if (Math.Sign(fx) == Math.Sign(fa))
            {
                (c, fc) = (a, fa);
            }
            else
            {
                (c, fc, b, fb) = (b, fb, a, fa);
            }

            (a, fa) = (x, fx);
            double best = Math.Abs(fa) < Math.Abs(fb) ? a : b;
            double smallestStep = (RelativeStep * Math.Abs(best) + double.Epsilon) / Math.Abs(b - a);
            if (fa == 0 || smallestStep > 0.5)
            {
                return fa == 0 ? a : best;
            }

            double xi = (a - b) / (c - b),
                phi = (fa - fb) / (fc - fb);
            bool interpolate = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
            double t = interpolate ? fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb) : 0.5;
            x = interpolate ? a + Math.Clamp(t, smallestStep, 1 - smallestStep) * (b - a) : Middle(a, b, step);
        }

        return Math.Abs(fa) < Math.Abs(fb) ? a : b;
    }

    private static double Middle(double a, double b, int step)
    {
        double larger = Math.Max(Math.Abs(a), Math.Abs(b)),
            smaller = Math.Max(Math.Min(Math.Abs(a), Math.Abs(b)), double.Epsilon);
        bool apart = step >= ArithmeticSteps && Math.Sign(a) * Math.Sign(b) >= 0 && larger > Decades * smaller;
        return apart ? Math.Sign(a + b) * Math.Sqrt(larger) * Math.Sqrt(smaller) : a + 0.5 * (b - a);
    }

    /// <summary>
    /// The root of a function that rises from negative to positive on (0, infinity); the upper end of the bracket is found by doubling.
    /// </summary>
    /// <param name="function">A continuous, rising function, negative at <paramref name="from"/>.</param>
    /// <param name="from">The lower end of the bracket, 0 or more.</param>
    /// <param name="firstGuess">Where to look first for the upper end, more than <paramref name="from"/>.</param>
    public static double FindAbove(Func<double, double> function, double from, double firstGuess)
    {
        double to = firstGuess;
        while (function(to) < 0)
        {
            (from, to) = (to, to * 2);
            if (double.IsPositiveInfinity(to))
            {
                return double.PositiveInfinity;
            }
        }

        return Find(function, from, to);
    }
}
