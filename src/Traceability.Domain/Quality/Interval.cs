namespace Traceability.Domain.Quality;

/// <summary>
/// A confidence interval. Either end may be infinite (an odds ratio without a failure on one side has no upper or no lower bound), never
/// NaN.
/// </summary>
/// <param name="Lower">The lower end, in the unit of the estimate.</param>
/// <param name="Upper">The upper end, in the unit of the estimate.</param>
/// <param name="Confidence">The confidence level, between 0 and 1, for example 0.95.</param>
public readonly record struct Interval(double Lower, double Upper, double Confidence)
{
    /// <summary>The usual confidence level where none is asked for.</summary>
    public const double UsualConfidence = 0.95;

    /// <summary>True when the value lies in the interval or on one of its ends.</summary>
    /// <param name="value">The value asked about.</param>
    public bool Contains(double value) => Lower <= value && value <= Upper;

    /// <summary>Guards what is computed at a confidence level.</summary>
    /// <param name="confidence">The level asked for.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level does not lie between 0 and 1, both excluded.</exception>
    public static void RequireConfidence(double confidence)
    {
        if (confidence is not (> 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(confidence),
                confidence,
                "A confidence level lies between 0 and 1, both excluded."
            );
        }
    }
}
