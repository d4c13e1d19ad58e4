using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Capability;

/// <summary>Why a capability figure may not be quoted.</summary>
public enum CapabilityObjection
{
    /// <summary>Fewer than 30 values.</summary>
    TooFewValues,

    /// <summary>The individuals chart shows a point beyond 3 sigma: the process is not steady, so it has no one capability.</summary>
    NotInControl,

    /// <summary>The Anderson-Darling p is below 0.05: shares outside the limits by the normal distribution would be wrong.</summary>
    NotNormal,
}

/// <summary>
/// Capability of a characteristic from its readings, with intervals, and the verdict whether the figures may be quoted to anyone.
/// </summary>
/// <remarks>
/// Cp and Cpk with the short-term sigma (mean moving range / 1.128379), Pp and Ppk with the overall s. Objections: fewer than 30 values, a
/// point beyond 3 sigma, Anderson-Darling p below 0.05 (common practice, no source). Needs 2 values that differ, otherwise "not enough
/// data". Checked by F6 and <c>CapabilityStudyTests</c>.
/// </remarks>
/// <param name="Values">n.</param>
/// <param name="Mean">The mean.</param>
/// <param name="ShortTermSigma">By the mean moving range.</param>
/// <param name="OverallSigma">s over all values.</param>
/// <param name="ShortTerm">Cp and Cpk.</param>
/// <param name="Overall">Pp and Ppk.</param>
/// <param name="PotentialInterval">The interval of Pp, or null with one limit.</param>
/// <param name="ActualInterval">The interval of Ppk.</param>
/// <param name="Normality">The Anderson-Darling test.</param>
/// <param name="Objections">Why the figures may not be quoted; empty when they may.</param>
public sealed record CapabilityStudy(
    int Values,
    double Mean,
    double ShortTermSigma,
    double OverallSigma,
    CapabilityIndices ShortTerm,
    CapabilityIndices Overall,
    Interval? PotentialInterval,
    Interval ActualInterval,
    Computed<AndersonDarlingResult> Normality,
    IReadOnlyList<CapabilityObjection> Objections
)
{
    /// <summary>The least number of values for a figure that may be quoted.</summary>
    public const int LeastValues = 30;

    /// <summary>Below this p of the normality test the figures may not be quoted.</summary>
    public const double LeastNormalityP = 0.05;

    /// <summary>True when nothing speaks against quoting the figures.</summary>
    public bool MayBeQuoted => Objections.Count == 0;

    /// <summary>Studies a characteristic.</summary>
    /// <param name="values">The readings in the order made.</param>
    /// <param name="limits">The limits, in the same unit.</param>
    /// <param name="confidence">The confidence level of the intervals, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A confidence level outside 0 to 1, or limits that <see cref="SpecificationLimits.Require"/> refuses.
    /// </exception>
    /// <exception cref="ArgumentException">A value that is not a finite number.</exception>
    public static Computed<CapabilityStudy> Of(
        IReadOnlyList<double> values,
        SpecificationLimits limits,
        double confidence = Interval.UsualConfidence
    )
    {
        limits.Require();
        Computed<IndividualsChart> charted = IndividualsChart.Of(values);
        if (charted.Missing is { } missing)
        {
            return missing;
        }

        IndividualsChart chart = charted.Value;
        double mean = chart.Individuals.Centre,
            overallSigma = Sample.StandardDeviation(values);
        if (overallSigma == 0 || chart.Sigma == 0)
        {
            return new NotEnoughData("different values", 2, 1);
        }

        Computed<AndersonDarlingResult> normality = AndersonDarling.Test(values);
        CapabilityIndices overall = CapabilityIndices.Of(mean, overallSigma, limits);
        return new CapabilityStudy(
            values.Count,
            mean,
            chart.Sigma,
            overallSigma,
            CapabilityIndices.Of(mean, chart.Sigma, limits),
            overall,
            overall.Potential is { } pp ? CapabilityIntervals.OfPotential(pp, values.Count, confidence) : null,
            CapabilityIntervals.OfActual(overall.Actual, values.Count, confidence),
            normality,
            [.. Objecting()]
        );

        IEnumerable<CapabilityObjection> Objecting()
        {
            if (values.Count < LeastValues)
            {
                yield return CapabilityObjection.TooFewValues;
            }

            if (values.Any(chart.Individuals.IsBeyond))
            {
                yield return CapabilityObjection.NotInControl;
            }

            if (normality.IsKnown && normality.Value.P < LeastNormalityP)
            {
                yield return CapabilityObjection.NotNormal;
            }
        }
    }
}
