using System.Globalization;
using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries.Analyses;

namespace Traceability.Web.Features.Quality.ControlCharts;

/// <summary>Cuts values into subgroups that belong together. All must be of one size: the middle size of the groups there are.</summary>
internal static class Grouping
{
    private const int LargestSize = 10;

    public static Subgroups Of(IReadOnlyList<ChartPoint> points, string by, TimeZoneInfo zone)
    {
        var groups = (
            by == "week"
                ? points
                    .GroupBy(p => DayOf(p, zone))
                    .GroupBy(
                        d => IsoWeek.Of(d.Key),
                        d => d.AsEnumerable(),
                        (week, days) => (Name: week, Points: days.SelectMany(d => d).ToArray())
                    )
                : points
                    .Where(p => p.Load is not null)
                    .GroupBy(p => p.Load, (_, load) => (Name: BegunAt(load.First()), Points: load.ToArray()))
        ).ToList();
        var sizes = groups.Select(g => g.Points.Length).Where(s => s > 1).Order().ToList();
        var size = sizes.Count == 0 ? 2 : Math.Min(LargestSize, sizes[(sizes.Count - 1) / 2]);
        var full = groups.Where(g => g.Points.Length >= size).ToList();
        var chart = SubgroupChart.Of([.. full.Select(g => g.Points.Take(size).Select(p => p.Value).ToArray())]);
        return chart.Match(
            c => new Subgroups(
                by,
                size,
                groups.Count - full.Count,
                null,
                [.. full.Select(g => g.Name)],
                [.. full.Select(g => g.Points[0].Serial)],
                c.Means,
                c.Ranges,
                c.MeansByRange,
                c.RangeLimits,
                c.MeansBeyondLimits,
                c.RangesBeyondLimits
            ),
            missing => new Subgroups(by, size, groups.Count - full.Count, missing.ToString(), [], [], [], [], null, null, [], [])
        );
    }

    private static DateTime DayOf(ChartPoint point, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(point.At, zone).Date;

    private static string BegunAt(ChartPoint point) => point.At.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
