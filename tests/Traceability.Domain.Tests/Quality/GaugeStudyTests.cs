using CsCheck;
using Traceability.Domain.Quality.GaugeStudy;
using Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

namespace Traceability.Domain.Tests.Quality;

public class GaugeStudyTests
{
    private static readonly Gen<GaugeReading[]> AnyStudy = Gen.Double[-5, 5]
        .Array[24]
        .Select(values => values.Select((v, i) => new GaugeReading($"part {i % 4}", $"appraiser {i / 4 % 3}", i % 4 * 3 + v)).ToArray());

    [Fact]
    public void The_lines_add_up_to_the_total() =>
        AnyStudy.Sample(readings =>
        {
            CrossedGaugeStudy study = CrossedGaugeStudy.Of(readings).Value;
            double mean = readings.Average(r => r.Value),
                total = readings.Sum(r => Math.Pow(r.Value - mean, 2));
            Assert.Equal(
                total,
                new[] { study.Appraiser, study.Part, study.Interaction, study.Repeatability }.Sum(s => s.SumOfSquares),
                1e-8
            );
            Assert.Equal(23, new[] { study.Appraiser, study.Part, study.Interaction, study.Repeatability }.Sum(s => s.DegreesOfFreedom));
        });

    [Fact]
    public void The_order_of_the_readings_changes_nothing() =>
        AnyStudy.Sample(readings =>
            Assert.Equal(
                CrossedGaugeStudy.Of(readings).Value.Variation.Gauge,
                CrossedGaugeStudy.Of([.. readings.Reverse()]).Value.Variation.Gauge,
                1e-9
            )
        );

    [Fact]
    public void A_perfect_gauge_has_no_spread_and_tells_all_parts_apart()
    {
        GaugeReading[] readings =
        [
            .. Enumerable.Range(0, 24).Select(i => new GaugeReading($"part {i % 4}", $"appraiser {i / 4 % 3}", i % 4)),
        ];
        CrossedGaugeStudy study = CrossedGaugeStudy.Of(readings).Value;
        Assert.Equal((0, 0), (study.Variation.Gauge, study.Variation.GaugePercentOfTotal));
        Assert.Equal(int.MaxValue, study.Variation.DistinctCategories);
    }

    /// <summary>Source: the worked example of the measurement systems analysis manual, GRR 27.86 % and ndc 4 (from memory).</summary>
    [Fact]
    public void An_interaction_that_looks_like_chance_is_pooled()
    {
        CrossedGaugeStudy study = CrossedGaugeStudy.Of(GaugeStudyCases.Readings).Value;
        Assert.True(study.IsInteractionPooled);
        Assert.Equal(study.PooledVariation, study.Variation);
        Assert.Equal((27.86, 4), (Math.Round(study.Variation.GaugePercentOfTotal, 2), study.Variation.DistinctCategories));
        Assert.Equal(0.434, study.InteractionTest.Statistic, 3);
    }

    [Fact]
    public void An_interaction_that_is_there_is_kept_apart()
    {
        GaugeReading[] readings =
        [
            .. Enumerable
                .Range(0, 24)
                .Select(i => new GaugeReading($"part {i % 4}", $"appraiser {i / 4 % 3}", i % 4 + i % 4 * (i / 4 % 3) + i / 12 * 0.01)),
        ];
        CrossedGaugeStudy study = CrossedGaugeStudy.Of(readings).Value;
        Assert.False(study.IsInteractionPooled);
        Assert.Equal(study.SeparateVariation, study.Variation);
        Assert.True(study.Variation.Interaction > 0);
    }

    [Fact]
    public void The_share_of_the_tolerance_is_six_spreads_by_the_width() =>
        Assert.Equal(30, new GaugeVariation(0.3, 0.4, 0, 5).GaugePercentOfTolerance(10), 12);

    [Fact]
    public void A_missing_reading_is_said_plainly()
    {
        GaugeReading[] readings = [.. Enumerable.Range(0, 23).Select(i => new GaugeReading($"part {i % 4}", $"appraiser {i / 4 % 3}", i))];
        Assert.Equal(
            "not enough data: needs at least 2 readings of every part by every appraiser, has 1",
            CrossedGaugeStudy.Of(readings).ToString()
        );
    }

    [Fact]
    public void One_appraiser_is_not_enough() =>
        Assert.Equal(
            "appraisers",
            CrossedGaugeStudy.Of([.. Enumerable.Range(0, 8).Select(i => new GaugeReading($"part {i % 4}", "A", i))]).Missing!.What
        );
}
