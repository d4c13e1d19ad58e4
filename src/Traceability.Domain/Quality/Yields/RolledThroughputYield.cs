namespace Traceability.Domain.Quality.Yields;

/// <summary>
/// The chance that a part passes every step at its first attempt: RTY = product of the first-pass yields of the steps.
/// </summary>
/// <remarks>
/// Interval by recovering variances from Wilson's limits l_i, u_i of each step on the log scale (steps taken as independent):
/// ln L = ln RTY - sqrt(Sum (ln p_i - ln l_i)^2), ln U = ln RTY + sqrt(Sum (ln u_i - ln p_i)^2); for one step it is Wilson's own.
/// A step where nothing passed gives RTY 0 and L = 0; U is then the product of the upper limits of those steps. At least one step and one
/// judged part in each, otherwise "not enough data". DPU = -ln RTY (defects per unit, Poisson). Source of the interval: G. Y. Zou and A.
/// Donner, Statistics in Medicine 27 (2008), from memory. Checked by F12 and <c>IntervalAndTestProperties</c>.
/// </remarks>
/// <param name="Value">RTY, 0 to 1.</param>
/// <param name="Interval">Its interval.</param>
/// <param name="Steps">The steps it is made of.</param>
public sealed record RolledThroughputYield(double Value, Interval Interval, IReadOnlyList<FirstPassYield> Steps)
{
    /// <summary>Expected defects per unit, -ln RTY; infinite when RTY is 0.</summary>
    public double DefectsPerUnit => DefectsPerUnitOf(Value);

    /// <summary>RTY from the counts of each step.</summary>
    /// <param name="steps">Passed at first attempt and judged, one pair per step in route order.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    public static Computed<RolledThroughputYield> Of(
        IReadOnlyList<(int PassedFirst, int Judged)> steps,
        double confidence = Interval.UsualConfidence
    )
    {
        int empty = steps.Count(step => step.Judged == 0);
        if (steps.Count == 0 || empty > 0)
        {
            return new NotEnoughData("steps with judged parts", Math.Max(1, steps.Count), steps.Count - empty);
        }

        FirstPassYield[] yields = [.. steps.Select(step => FirstPassYield.Of(step.PassedFirst, step.Judged, confidence).Value)];
        double value = Product([.. yields.Select(y => y.Value)]);
        if (value == 0)
        {
            double upper = yields.Where(y => y.Value == 0).Aggregate(1.0, (product, y) => product * y.Interval.Upper);
            return new RolledThroughputYield(0, new Interval(0, upper, confidence), yields);
        }

        double down = Math.Sqrt(yields.Sum(y => Square(Math.Log(y.Value / y.Interval.Lower))));
        double up = Math.Sqrt(yields.Sum(y => Square(Math.Log(y.Interval.Upper / y.Value))));
        var interval = new Interval(value * Math.Exp(-down), Math.Min(1, value * Math.Exp(up)), confidence);
        return new RolledThroughputYield(value, interval, yields);
    }

    /// <summary>RTY from known first-pass yields, without an interval; 1 for no step at all.</summary>
    /// <param name="yields">First-pass yields, each from 0 to 1.</param>
    /// <exception cref="ArgumentException">A yield does not lie from 0 to 1.</exception>
    public static double Product(IReadOnlyList<double> yields)
    {
        if (yields.Any(y => y is not (>= 0 and <= 1)))
        {
            throw new ArgumentException("A yield lies between 0 and 1.", nameof(yields));
        }

        return yields.Aggregate(1.0, (product, y) => product * y);
    }

    /// <summary>-ln RTY for a given RTY from 0 to 1; infinite at 0.</summary>
    /// <param name="rolledThroughputYield">RTY.</param>
    /// <exception cref="ArgumentOutOfRangeException">RTY does not lie from 0 to 1.</exception>
    public static double DefectsPerUnitOf(double rolledThroughputYield)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(rolledThroughputYield);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rolledThroughputYield, 1);
        return rolledThroughputYield == 1 ? 0 : -Math.Log(rolledThroughputYield);
    }

    private static double Square(double x) => x * x;
}
