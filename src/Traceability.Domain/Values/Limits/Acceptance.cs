namespace Traceability.Domain.Values.Limits;

/// <summary>Whether a value conforms to its limits, as far as its uncertainty lets it be known.</summary>
public enum Conformity
{
    /// <summary>It conforms under the rule.</summary>
    Met,

    /// <summary>It lies inside the limits, but so near to one that it is not shown to conform.</summary>
    Conditional,

    /// <summary>It lies outside the limits.</summary>
    NotMet,
}

/// <summary>The limits of a characteristic with the uncertainty that its values carry and the rule by which they are judged.</summary>
/// <param name="Lower">Lower limit, inclusive; null = none.</param>
/// <param name="Upper">Upper limit, inclusive; null = none.</param>
/// <param name="ExpandedUncertainty">U with coverage factor 2, in the unit of the value, above zero; null = not stated, and the limits
/// alone judge.</param>
/// <param name="Guarded">True = guarded acceptance, false = simple acceptance.</param>
/// <remarks>
/// The guard band is 1.645 u = 0.8225 U inside each limit, so that a value on its edge is outside the limit with 5 % at most. Judged in
/// decimal, so that a value that equals a limit or an edge belongs to the better side whatever its digits. Source: JCGM 106:2012, clauses 7
/// and 8, from memory; see <see cref="DecisionRule"/>. Checks: <c>AcceptanceTests</c>.
/// </remarks>
public sealed record Acceptance(decimal? Lower, decimal? Upper, decimal? ExpandedUncertainty = null, bool Guarded = false)
{
    private const decimal CoverageFactor = 2;

    /// <summary>Width of the guard band inside each limit; zero under simple acceptance.</summary>
    public decimal GuardBand =>
        Guarded && ExpandedUncertainty is { } expanded ? (decimal)DecisionRule.OneSided95 * expanded / CoverageFactor : 0;

    /// <summary>What can be said of a value.</summary>
    public Conformity Judge(decimal value) =>
        value < Lower || value > Upper ? Conformity.NotMet
        : value < Lower + GuardBand || value > Upper - GuardBand ? Conformity.Conditional
        : Conformity.Met;

    /// <summary>
    /// The probability that the true value lies inside the limits, 0 to 1; null when no uncertainty or no limit is stated.
    /// </summary>
    public double? ProbabilityOfConformance(decimal value) =>
        ExpandedUncertainty is { } expanded && (Lower ?? Upper) is not null
            ? ConformanceProbability.Of((double)value, (double)(expanded / CoverageFactor), new((double?)Lower, (double?)Upper))
            : null;
}
