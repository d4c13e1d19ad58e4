namespace Traceability.Domain.Values.Limits;

/// <summary>How a measured value becomes a verdict.</summary>
/// <param name="GuardFactor">
/// Width of the guard band inside each limit, in standard uncertainties: w = g u. Zero is simple acceptance, 1.645 leaves at most 5 %
/// for the true value to be outside when the value lies on the edge of the acceptance interval.
/// </param>
/// <remarks>
/// Accept: y in [L + w, U - w]. Reject: y outside [L, U]. Conditional: between, where the limits are met but not shown to be. Limits
/// and edges themselves belong to the better side. Source: JCGM 106:2012, clause 8 (guarded acceptance), from memory; that a value
/// outside the limit is always rejected is this workshop's choice. Checks: published values F18, <c>DecisionTests</c>.
/// </remarks>
public sealed record DecisionRule(double GuardFactor)
{
    /// <summary>Width of the guard band in standard uncertainties; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A negative factor, or NaN.</exception>
    public double GuardFactor { get; } = Require.NotNegative(GuardFactor);

    /// <summary>Guard factor for 95 % on one side.</summary>
    public const double OneSided95 = 1.645;

    /// <summary>Simple acceptance: the uncertainty is stated, and the risk shared.</summary>
    public static DecisionRule Simple { get; } = new(0);

    /// <summary>Guarded acceptance with 1.645 standard uncertainties.</summary>
    public static DecisionRule Guarded { get; } = new(OneSided95);

    /// <summary>Decides.</summary>
    /// <param name="value">y, measured value.</param>
    /// <param name="standardUncertainty">u, in the unit of y; not negative.</param>
    /// <param name="tolerance">The limits.</param>
    /// <exception cref="ArgumentOutOfRangeException">No limit, limits in the wrong order, a negative uncertainty, or NaN.</exception>
    public AcceptanceDecision Decide(double value, double standardUncertainty, ToleranceInterval tolerance)
    {
        var probability = ConformanceProbability.Of(value, standardUncertainty, tolerance);
        var guard = GuardFactor * standardUncertainty;
        var verdict =
            value < tolerance.LowerOrNone || value > tolerance.UpperOrNone ? DecisionVerdict.Reject
            : value < tolerance.LowerOrNone + guard || value > tolerance.UpperOrNone - guard ? DecisionVerdict.Conditional
            : DecisionVerdict.Accept;
        return new(verdict, probability, tolerance.Lower + guard, tolerance.Upper - guard);
    }

    /// <summary>Decides with an expanded uncertainty.</summary>
    /// <param name="value">y, measured value.</param>
    /// <param name="expandedUncertainty">k u, in the unit of y; not negative.</param>
    /// <param name="coverageFactor">k; greater than zero, usually 2.</param>
    /// <param name="tolerance">The limits.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public AcceptanceDecision DecideExpanded(
        double value,
        double expandedUncertainty,
        double coverageFactor,
        ToleranceInterval tolerance
    ) => Decide(value, Require.NotNegative(expandedUncertainty) / Require.Positive(coverageFactor), tolerance);
}

/// <summary>What a decision rule says about one value.</summary>
public enum DecisionVerdict
{
    /// <summary>Inside the limits, the guard bands taken off.</summary>
    Accept,

    /// <summary>Inside the limits, but in a guard band.</summary>
    Conditional,

    /// <summary>Outside the limits.</summary>
    Reject,
}

/// <summary>A verdict with what it rests on.</summary>
/// <param name="Verdict">The verdict.</param>
/// <param name="ConformanceProbability">Probability that the true value conforms, 0 to 1.</param>
/// <param name="AcceptFrom">Lower end of the acceptance interval; null without lower limit.</param>
/// <param name="AcceptTo">Upper end of the acceptance interval; null without upper limit.</param>
public readonly record struct AcceptanceDecision(
    DecisionVerdict Verdict,
    double ConformanceProbability,
    double? AcceptFrom,
    double? AcceptTo
);
