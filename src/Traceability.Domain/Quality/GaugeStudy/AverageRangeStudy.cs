using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.GaugeStudy;

/// <summary>
/// Gauge repeatability and reproducibility by averages and ranges, the way it can be done on paper.
/// </summary>
/// <remarks>
/// EV = R K1; AV = sqrt((X K2)^2 - EV^2/(n r)), 0 where negative; PV = Rp K3; R is the mean range within cells, X the range of the
/// appraiser means, Rp the range of the part means. Cannot see an interaction: <see cref="CrossedGaugeStudy"/> can. Needs the same as that
/// one. Source: measurement systems analysis manual, from memory. Checked by F14-010 to F14-012.
/// </remarks>
/// <param name="MeanRange">R.</param>
/// <param name="AppraiserDifference">X.</param>
/// <param name="PartRange">Rp.</param>
/// <param name="Variation">EV, AV and PV; the interaction is 0.</param>
public sealed record AverageRangeStudy(double MeanRange, double AppraiserDifference, double PartRange, GaugeVariation Variation)
{
    /// <summary>Analyses the readings of a study, in any order.</summary>
    /// <param name="readings">All readings.</param>
    /// <param name="factors">K1 to K3; computed unless given.</param>
    public static Computed<AverageRangeStudy> Of(IReadOnlyList<GaugeReading> readings, AverageRangeFactors? factors = null) =>
        GaugeCells.Of(readings).Select(cells => Analyse(cells, factors));

    private static AverageRangeStudy Analyse(GaugeCells cells, AverageRangeFactors? given)
    {
        AverageRangeFactors factors = given ?? AverageRangeFactors.For(cells.Trials, cells.Appraisers, cells.Parts);
        double meanRange = Sample.Mean([.. cells.Readings.SelectMany(row => row.Select(Sample.Range))]);
        double difference = Sample.Range(cells.AppraiserMeans),
            partRange = Sample.Range(cells.PartMeans);
        double ev = meanRange * factors.K1,
            xk = difference * factors.K2;
        double av = Math.Sqrt(Math.Max(0, xk * xk - ev * ev / (cells.Parts * cells.Trials)));
        return new AverageRangeStudy(meanRange, difference, partRange, new GaugeVariation(ev, av, 0, partRange * factors.K3));
    }
}
