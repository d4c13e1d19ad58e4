using CsCheck;
using Traceability.Domain.Quality.GaugeStudy;

namespace Traceability.Domain.Tests.Quality;

public class GaugeStudyTests
{
    private static readonly Gen<GaugeReading[]> AnyStudy = Gen.Double[-5, 5].Array[24].Select(values =>
        values.Select((v, i) => new GaugeReading($"part {i % 4}", $"appraiser {i / 4 % 3}", i % 4 * 3 + v)).ToArray());

    [Fact]
    public void The_lines_add_up_to_the_total() => AnyStudy.Sample(readings =>
    {
        CrossedGaugeStudy study = CrossedGaugeStudy.Of(readings).Value;
        double mean = readings.Average(r => r.Value), total = readings.Sum(r => Math.Pow(r.Value - mean, 2));
        Assert.Equal(total, new[] { study.Appraiser, study.Part, study.Interaction, study.Repeatability }.Sum(s => s.SumOfSquares), 8);
        Assert.Equal(23, new[] { study.Appraiser, study.Part, study.Interaction, study.Repeatability }.Sum(s => s.DegreesOfFreedom));
    });

    [Fact]
    public void The_order_of_the_readings_changes_nothing() => AnyStudy.Sample(readings =>
        Assert.Equal(CrossedGaugeStudy.Of(readings).Value.Variation.Gauge, CrossedGaugeStudy.Of([.. readings.Reverse()]).Value.Variation.Gauge, 9));

    [Fact]
    public void A_perfect_gauge_has_no_spread_and_tells_all_parts_apart()
    {
        GaugeReading[] readings = [.. Enumerable.Range(0, 24).Select(i => new GaugeReading($"part {i % 4}", $"appraiser {i / 4 % 3}", i % 4))];
        CrossedGaugeStudy study = CrossedGaugeStudy.Of(readings).Value;
        Assert.Equal((0, 0), (study.Variation.Gauge, study.Variation.GaugePercentOfTotal));
        Assert.Equal(int.MaxValue, study.Variation.DistinctCategories);
    }

    [Fact]
    public void A_missing_reading_is_said_plainly()
    {
        GaugeReading[] readings = [.. Enumerable.Range(0, 23).Select(i => new GaugeReading($"part {i % 4}", $"appraiser {i / 4 % 3}", i))];
        Assert.Equal(
            "not enough data: needs at least 2 readings of every part by every appraiser, has 1", CrossedGaugeStudy.Of(readings).ToString());
    }

    [Fact]
    public void One_appraiser_is_not_enough() => Assert.Equal(
        "appraisers", CrossedGaugeStudy.Of([.. Enumerable.Range(0, 8).Select(i => new GaugeReading($"part {i % 4}", "A", i))]).Missing!.What);
}
