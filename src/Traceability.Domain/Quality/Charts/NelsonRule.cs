namespace Traceability.Domain.Quality.Charts;

/// <summary>Nelson's eight signs that a process has changed, by his numbers.</summary>
public enum NelsonRule
{
    /// <summary>1: one point more than 3 sigma from the centre.</summary>
    OneBeyondThreeSigma = 1,

    /// <summary>2: nine points in a row on the same side of the centre.</summary>
    NineOnOneSide = 2,

    /// <summary>3: six points in a row, each above (or each below) the one before.</summary>
    SixRisingOrFalling = 3,

    /// <summary>4: fourteen points in a row going up and down by turns.</summary>
    FourteenAlternating = 4,

    /// <summary>5: two of three points in a row more than 2 sigma out on the same side.</summary>
    TwoOfThreeBeyondTwoSigma = 5,

    /// <summary>6: four of five points in a row more than 1 sigma out on the same side.</summary>
    FourOfFiveBeyondOneSigma = 6,

    /// <summary>7: fifteen points in a row less than 1 sigma from the centre.</summary>
    FifteenWithinOneSigma = 7,

    /// <summary>8: eight points in a row more than 1 sigma from the centre, on either side.</summary>
    EightBeyondOneSigma = 8,
}

/// <summary>A rule broken at a point.</summary>
/// <param name="Rule">Which rule.</param>
/// <param name="Index">The position (from 0) of the point that completes the pattern.</param>
public readonly record struct RuleBreak(NelsonRule Rule, int Index);
