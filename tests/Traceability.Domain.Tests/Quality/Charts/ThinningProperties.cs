using CsCheck;
using Traceability.Domain.Quality.Charts;

namespace Traceability.Domain.Tests.Quality.Charts;

public class ThinningProperties
{
    private static readonly Gen<List<double>> AnySeries = Gen.Double[-100, 100].List[0, 400];

    [Fact]
    public void A_hundred_thousand_points_become_what_a_screen_can_show_and_the_chart_says_so()
    {
        double[] values = [.. Enumerable.Range(0, 100_000).Select(i => Math.Sin(i / 500.0) + (i == 54_321 ? 9 : 0))];
        ThinnedPoints thinned = ChartThinning.Of(values, 2000);
        Assert.InRange(thinned.Kept.Count, 1000, 2000);
        Assert.Contains(54_321, thinned.Kept);
        Assert.StartsWith(
            FormattableString.Invariant($"{thinned.Kept.Count} of 100000 points are drawn"),
            thinned.Note,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_short_series_is_kept_whole_and_nothing_is_said()
    {
        ThinnedPoints thinned = ChartThinning.Of([3, 1, 2], 4);
        Assert.Equal([0, 1, 2], thinned.Kept);
        Assert.Null(thinned.Note);
    }

    [Fact]
    public void The_highest_the_lowest_the_first_and_the_last_point_stay() =>
        AnySeries
            .Where(s => s.Count > 0)
            .Sample(series =>
            {
                IReadOnlyList<int> kept = ChartThinning.Of(series, 20).Kept;
                Assert.Equal((series.Min(), series.Max()), (kept.Min(i => series[i]), kept.Max(i => series[i])));
                Assert.Equal((0, series.Count - 1), (kept[0], kept[^1]));
            });

    [Fact]
    public void No_more_points_stay_than_asked_for() =>
        AnySeries.Sample(series => Assert.True(ChartThinning.Of(series, 20).Kept.Count <= 20));

    [Fact]
    public void Marked_points_stay() =>
        Gen.Select(AnySeries, Gen.Int[0, 399])
            .Where(g => g.Item2 < g.Item1.Count)
            .Sample((series, marked) => Assert.Contains(marked, ChartThinning.Of(series, 8, [marked]).Kept));
}
