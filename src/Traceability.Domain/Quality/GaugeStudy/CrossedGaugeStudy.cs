using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;
using Traceability.Domain.Work.Studies;

namespace Traceability.Domain.Quality.GaugeStudy;

/// <summary>
/// Gauge repeatability and reproducibility by analysis of variance: n parts, each measured r times by each of k appraisers.
/// </summary>
/// <remarks>
/// EV^2 = MS_e, INT^2 = (MS_int - MS_e)/r, AV^2 = (MS_app - MS_int)/(n r), PV^2 = (MS_part - MS_int)/(k r), negatives taken as 0. When the
/// p of the interaction is above 0.25 it is pooled: MS_e becomes (SS_e + SS_int)/(df_e + df_int) and stands for MS_int as well (common
/// practice of the measurement systems analysis manual; some use 0.05). Needs 2 parts, 2 appraisers and the same number of readings, 2 or
/// more, in every cell; otherwise "not enough data". Checked by F14.
/// </remarks>
/// <param name="Parts">n.</param>
/// <param name="Appraisers">k.</param>
/// <param name="Trials">r.</param>
/// <param name="Appraiser">The line of the appraisers.</param>
/// <param name="Part">The line of the parts.</param>
/// <param name="Interaction">The line of the interaction.</param>
/// <param name="Repeatability">The line of repeated readings.</param>
public sealed record CrossedGaugeStudy(
    int Parts,
    int Appraisers,
    int Trials,
    VarianceSource Appraiser,
    VarianceSource Part,
    VarianceSource Interaction,
    VarianceSource Repeatability
)
{
    /// <summary>Above this p the interaction is taken as chance and pooled into repeatability.</summary>
    public const double PoolAboveP = 0.25;

    /// <summary>Repeatability and interaction together.</summary>
    public VarianceSource Pooled =>
        new(Repeatability.SumOfSquares + Interaction.SumOfSquares, Repeatability.DegreesOfFreedom + Interaction.DegreesOfFreedom);

    /// <summary>Do appraisers measure some parts differently? Interaction against repeatability.</summary>
    public VarianceRatioResult InteractionTest => Against(Interaction, Repeatability);

    /// <summary>True when the interaction looks like chance and <see cref="Variation"/> pools it.</summary>
    public bool IsInteractionPooled => InteractionTest.P > PoolAboveP;

    /// <summary>The variation as it should be reported: pooled or not by the interaction test.</summary>
    public GaugeVariation Variation => IsInteractionPooled ? PooledVariation : SeparateVariation;

    /// <summary>The variation with the interaction kept apart.</summary>
    public GaugeVariation SeparateVariation => Components(Repeatability.MeanSquare, Interaction.MeanSquare);

    /// <summary>The variation with the interaction pooled into repeatability.</summary>
    public GaugeVariation PooledVariation => Components(Pooled.MeanSquare, Pooled.MeanSquare);

    /// <summary>The test of one line against another as its error.</summary>
    /// <param name="source">The line in question: appraisers, parts or interaction.</param>
    /// <param name="error">The line it is measured by: interaction (the strict choice), repeatability or both pooled.</param>
    public static VarianceRatioResult Against(VarianceSource source, VarianceSource error)
    {
        double f =
            error.MeanSquare > 0 ? source.MeanSquare / error.MeanSquare
            : source.MeanSquare > 0 ? double.PositiveInfinity
            : 0;
        return new VarianceRatioResult(
            f,
            source.DegreesOfFreedom,
            error.DegreesOfFreedom,
            FDistribution.Above(f, source.DegreesOfFreedom, error.DegreesOfFreedom)
        );
    }

    /// <summary>The study of a workshop, by the readings that count; "not enough data" until every cell is filled.</summary>
    /// <param name="study">The study with its readings.</param>
    public static Computed<CrossedGaugeStudy> Of(StudyView study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var (counting, design) = (study.Counting, study.Study);
        return study.Missing.Count > 0
            ? new NotEnoughData("readings", design.Pieces.Length * design.People.Length * design.Repeats, counting.Count)
            : Of([.. counting.Values.Select(r => new GaugeReading(r.Piece, r.Person, (double)r.Value))]);
    }

    /// <summary>Analyses the readings of a study, in any order.</summary>
    /// <param name="readings">All readings.</param>
    public static Computed<CrossedGaugeStudy> Of(IReadOnlyList<GaugeReading> readings) => GaugeCells.Of(readings).Select(Analyse);

    private static CrossedGaugeStudy Analyse(GaugeCells cells)
    {
        int n = cells.Parts,
            k = cells.Appraisers,
            r = cells.Trials;
        double[] appraisers = cells.AppraiserMeans,
            parts = cells.PartMeans;
        double mean = Sample.Mean(parts),
            interaction = 0,
            repeatability = 0;
        for (int a = 0; a < k; a++)
        {
            for (int p = 0; p < n; p++)
            {
                double off = Sample.Mean(cells.Readings[a][p]) - appraisers[a] - parts[p] + mean;
                interaction += r * off * off;
                repeatability += Sample.SumOfSquares(cells.Readings[a][p]);
            }
        }

        return new CrossedGaugeStudy(
            n,
            k,
            r,
            new VarianceSource(n * r * Sample.SumOfSquares(appraisers), k - 1),
            new VarianceSource(k * r * Sample.SumOfSquares(parts), n - 1),
            new VarianceSource(interaction, (k - 1) * (n - 1)),
            new VarianceSource(repeatability, n * k * (r - 1))
        );
    }

    private GaugeVariation Components(double errorMeanSquare, double interactionMeanSquare) =>
        new(
            Math.Sqrt(errorMeanSquare),
            Root(Appraiser.MeanSquare - interactionMeanSquare, Parts * Trials),
            Root(interactionMeanSquare - errorMeanSquare, Trials),
            Root(Part.MeanSquare - interactionMeanSquare, Appraisers * Trials)
        );

    private static double Root(double difference, int of) => Math.Sqrt(Math.Max(0, difference / of));
}
