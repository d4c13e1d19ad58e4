using Traceability.Domain.Quality.Comparisons;

namespace Traceability.Domain.Quality.Causes;

/// <summary>How far one factor goes with a measured value.</summary>
/// <param name="Factor">The factor.</param>
/// <param name="Values">How many values were compared.</param>
/// <param name="Levels">How many levels were compared.</param>
/// <param name="LevelsTooSmall">How many levels had too few values to be compared.</param>
/// <param name="KruskalWallis">Do values of some levels tend to be larger? By ranks, whatever the distribution; the factor is ranked by its
/// p.</param>
/// <param name="AdjustedP">That p adjusted for all factors looked at (Benjamini-Hochberg).</param>
/// <param name="EpsilonSquared">How large the effect is, by ranks, 0 to 1.</param>
/// <param name="Welch">The same by means, allowing for unequal spread.</param>
/// <param name="OmegaSquared">How much of the variance lies between the levels, 0 to 1, without the bias of small samples.</param>
/// <param name="Furthest">The level whose values lie furthest from the others.</param>
public sealed record ValueAssociation(
    string Factor,
    int Values,
    int Levels,
    int LevelsTooSmall,
    ChiSquareResult KruskalWallis,
    double AdjustedP,
    double EpsilonSquared,
    Computed<VarianceRatioResult> Welch,
    double OmegaSquared,
    LevelShift Furthest
);

/// <summary>How the values of one level lie to those of all the others.</summary>
/// <param name="Level">The level.</param>
/// <param name="Summary">Size, mean and variance of its values.</param>
/// <param name="MeanOfOthers">The mean of all other values compared.</param>
/// <param name="CliffsDelta">The chance that a value of this level is larger than one of another, minus the chance that it is smaller: -1
/// to 1.</param>
public sealed record LevelShift(string Level, GroupSummary Summary, double MeanOfOthers, double CliffsDelta);

/// <summary>The ranked answer to "what does the measured value depend on?".</summary>
/// <param name="Associations">The strongest associations first.</param>
/// <param name="FactorsWithoutComparison">Factors that had fewer than two levels with enough values, or the same value throughout.</param>
public sealed record ValueCauseReport(IReadOnlyList<ValueAssociation> Associations, IReadOnlyList<string> FactorsWithoutComparison);
