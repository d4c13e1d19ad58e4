using System.Collections.Concurrent;
using MathNet.Numerics;
using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Charts;

/// <summary>
/// The constants of Shewhart charts for subgroups of n normal values, computed by integration and not looked up.
/// </summary>
/// <remarks>
/// d2 and d3 are mean and standard deviation of the range of n standard normal values; c4 = sqrt(2/(n-1)) Gamma(n/2)/Gamma((n-1)/2);
/// A2 = 3/(d2 sqrt n), A3 = 3/(c4 sqrt n), D3 and D4 = max(0, 1 -+ 3 d3/d2), B3 and B4 = max(0, 1 -+ 3 sqrt(1 - c4^2)/c4), E2 = 3/d2.
/// Valid for n from 2 to 100, others throw. Books round to three or four digits (1.128 for d2 at n = 2). Sources: Montgomery, Introduction
/// to Statistical Quality Control; ISO 7870-2. Checked by F1.
/// </remarks>
/// <param name="SubgroupSize">n.</param>
/// <param name="MeanRange">d2, in standard deviations.</param>
/// <param name="RangeDeviation">d3, in standard deviations.</param>
/// <param name="MeanDeviation">c4, the mean of s for a standard deviation of 1.</param>
public sealed record ControlChartConstants(int SubgroupSize, double MeanRange, double RangeDeviation, double MeanDeviation)
{
    private static readonly ConcurrentDictionary<int, ControlChartConstants> Computed = new();

    /// <summary>A2: limits of subgroup means from the mean range.</summary>
    public double MeansByRange => 3 / (MeanRange * Math.Sqrt(SubgroupSize));

    /// <summary>A3: limits of subgroup means from the mean standard deviation.</summary>
    public double MeansByDeviation => 3 / (MeanDeviation * Math.Sqrt(SubgroupSize));

    /// <summary>D3: lower limit of ranges.</summary>
    public double RangeLower => Math.Max(0, 1 - 3 * RangeDeviation / MeanRange);

    /// <summary>D4: upper limit of ranges.</summary>
    public double RangeUpper => 1 + 3 * RangeDeviation / MeanRange;

    /// <summary>B3: lower limit of standard deviations.</summary>
    public double DeviationLower => Math.Max(0, 1 - 3 * Math.Sqrt(1 - MeanDeviation * MeanDeviation) / MeanDeviation);

    /// <summary>B4: upper limit of standard deviations.</summary>
    public double DeviationUpper => 1 + 3 * Math.Sqrt(1 - MeanDeviation * MeanDeviation) / MeanDeviation;

    /// <summary>E2: limits of individual values from the mean range.</summary>
    public double IndividualsByRange => 3 / MeanRange;

    /// <summary>The constants for a subgroup size.</summary>
    /// <param name="subgroupSize">n, from 2 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">n does not lie from 2 to 100.</exception>
    public static ControlChartConstants For(int subgroupSize)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(subgroupSize, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(subgroupSize, 100);
        return Computed.GetOrAdd(
            subgroupSize,
            static n => new ControlChartConstants(
                n,
                RangeDistribution.Mean(n),
                RangeDistribution.StandardDeviation(n),
                Math.Sqrt(2.0 / (n - 1)) * Math.Exp(SpecialFunctions.GammaLn(n / 2.0) - SpecialFunctions.GammaLn((n - 1) / 2.0))
            )
        );
    }
}
