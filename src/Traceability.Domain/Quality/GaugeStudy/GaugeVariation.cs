namespace Traceability.Domain.Quality.GaugeStudy;

/// <summary>
/// Where the spread of readings comes from, as standard deviations in the unit of the readings.
/// </summary>
/// <param name="Repeatability">EV: the same person, part and instrument again.</param>
/// <param name="Reproducibility">AV: another person.</param>
/// <param name="Interaction">INT: a person measures some parts differently; 0 when pooled into repeatability.</param>
/// <param name="Part">PV: the parts themselves.</param>
public sealed record GaugeVariation(double Repeatability, double Reproducibility, double Interaction, double Part)
{
    /// <summary>GRR = sqrt(EV^2 + AV^2 + INT^2), the spread of measuring.</summary>
    public double Gauge => Math.Sqrt(Repeatability * Repeatability + Reproducibility * Reproducibility + Interaction * Interaction);

    /// <summary>TV = sqrt(GRR^2 + PV^2).</summary>
    public double Total => Math.Sqrt(Gauge * Gauge + Part * Part);

    /// <summary>100 GRR/TV; common practice: under 10 good, over 30 not fit for use.</summary>
    public double GaugePercentOfTotal => 100 * Gauge / Total;

    /// <summary>1.41 PV/GRR before it is cut to a whole number; infinite when measuring has no spread.</summary>
    public double DistinctCategoriesUncut => Gauge == 0 ? double.PositiveInfinity : 1.41 * Part / Gauge;

    /// <summary>
    /// ndc, how many groups of parts the gauge can tell apart (1.41 PV/GRR cut to a whole number); common practice: 5 or more.
    /// </summary>
    public int DistinctCategories => (int)Math.Min(int.MaxValue, Math.Floor(DistinctCategoriesUncut));

    /// <summary>100 x 6 GRR / (USL - LSL): the share of the tolerance that measuring uses up.</summary>
    /// <param name="tolerance">USL - LSL, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not above 0.</exception>
    public double GaugePercentOfTolerance(double tolerance)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(tolerance);
        return 100 * 6 * Gauge / tolerance;
    }
}
