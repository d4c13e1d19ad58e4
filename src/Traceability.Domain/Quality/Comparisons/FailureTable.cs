namespace Traceability.Domain.Quality.Comparisons;

/// <summary>
/// A two-by-two table: how many failed and passed here (one lot, one jig, one person) and elsewhere (all the rest). Sums are <c>long</c>:
/// two counts that each fit an <c>int</c> need not fit one together.
/// </summary>
/// <param name="FailedHere">a, 0 or more.</param>
/// <param name="PassedHere">b, 0 or more.</param>
/// <param name="FailedElsewhere">c, 0 or more.</param>
/// <param name="PassedElsewhere">d, 0 or more.</param>
public readonly record struct FailureTable(int FailedHere, int PassedHere, int FailedElsewhere, int PassedElsewhere)
{
    /// <summary>a + b.</summary>
    public long Here => (long)FailedHere + PassedHere;

    /// <summary>c + d.</summary>
    public long Elsewhere => (long)FailedElsewhere + PassedElsewhere;

    /// <summary>a + c.</summary>
    public long Failed => (long)FailedHere + FailedElsewhere;

    /// <summary>b + d.</summary>
    public long Passed => (long)PassedHere + PassedElsewhere;

    /// <summary>a + b + c + d.</summary>
    public long Total => Here + Elsewhere;

    /// <summary>
    /// The sample odds ratio a d / (b c): infinite when only the denominator is 0, 1 (no evidence either way) when both are 0.
    /// </summary>
    public double SampleOddsRatio
    {
        get
        {
            double up = (double)FailedHere * PassedElsewhere,
                down = (double)PassedHere * FailedElsewhere;
            return (up, down) switch
            {
                (0, 0) => 1,
                (_, 0) => double.PositiveInfinity,
                _ => up / down,
            };
        }
    }

    /// <summary>What keeps the table from being compared, or null when both groups and both results occur.</summary>
    /// <exception cref="InvalidOperationException">A count is below 0.</exception>
    public NotEnoughData? Missing()
    {
        if (FailedHere < 0 || PassedHere < 0 || FailedElsewhere < 0 || PassedElsewhere < 0)
        {
            throw new InvalidOperationException("A count of parts cannot be negative.");
        }

        return this switch
        {
            { Here: 0 } => new NotEnoughData("parts in the group", 1, 0),
            { Elsewhere: 0 } => new NotEnoughData("parts outside the group to compare with", 1, 0),
            { Failed: 0 } => new NotEnoughData("failed parts", 1, 0),
            { Passed: 0 } => new NotEnoughData("passed parts", 1, 0),
            _ => null,
        };
    }
}
