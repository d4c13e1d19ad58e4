using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Records;

namespace Traceability.Domain.Quality.Notices;

/// <summary>
/// Says which notices stand: rules broken on watched charts and film lots that stand out, each once, until something new becomes known
/// about it.
/// </summary>
/// <remarks>
/// Limits are drawn from all points of a chart, breaks count from <c>newsFrom</c> on. An acknowledged rule is raised again by a point that
/// became known after the acknowledged ones and breaks it; an older point that breaks it only because later points moved the limits does
/// not. A film lot is raised again by a failure later than the acknowledged ones, or by more failures than then. A chart with fewer than
/// <see cref="WatchedChart.FewestValues"/> values, or whose values never vary, raises nothing. Checked by <c>NoticeBoardTests</c>.
/// </remarks>
public static class NoticeBoard
{
    /// <summary>The notices that stand, the latest first.</summary>
    /// <param name="charts">The charts looked at.</param>
    /// <param name="lots">The film lots compared.</param>
    /// <param name="acknowledged">Every acknowledgement so far, in any order.</param>
    /// <param name="newsFrom">A break by a point from before this moment is no news.</param>
    public static IReadOnlyList<Notice> Of(
        IEnumerable<WatchedChart> charts,
        IEnumerable<ComparedLot> lots,
        IEnumerable<NoticeAcknowledgement> acknowledged,
        DateTimeOffset newsFrom
    )
    {
        Dictionary<NoticeSubject, Seen> seen = acknowledged
            .GroupBy(NoticeSubject.Of)
            .ToDictionary(g => g.Key, g => new Seen(g.Max(a => a.KnownUntil), g.Max(a => a.Points)));
        return
        [
            .. charts
                .SelectMany(c => OfChart(c, seen, newsFrom))
                .Concat(lots.Select(l => OfLot(l, seen)).OfType<Notice>())
                .OrderByDescending(n => n.LastAt)
                .ThenBy(n => n.Key, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<Notice> OfChart(WatchedChart chart, Dictionary<NoticeSubject, Seen> seen, DateTimeOffset newsFrom)
    {
        if (!chart.IsWatched || IndividualsChart.Of([.. chart.Points.Select(p => p.Value)]) is not { IsKnown: true, Value: var drawn })
        {
            return [];
        }

        DateTimeOffset knownUntil = chart.Points.Max(p => p.KnownAt);
        return drawn
            .RuleBreaks.Select(b => (Subject: NoticeSubject.Of(chart, b.Rule), Point: chart.Points[b.Index]))
            .Where(b =>
                b.Point.At >= newsFrom && !(seen.GetValueOrDefault(b.Subject) is { } before && b.Point.KnownAt <= before.KnownUntil)
            )
            .GroupBy(b => b.Subject, b => b.Point)
            .Select(g => new Notice(g.Key, g.Count(), g.Last().At, knownUntil, g.Last(), null));
    }

    private static Notice? OfLot(ComparedLot lot, Dictionary<NoticeSubject, Seen> seen)
    {
        if (!lot.StandsOut || lot.LastFailedAt is not { } last)
        {
            return null;
        }

        NoticeSubject subject = NoticeSubject.OfFilmLot(lot.Number);
        return seen.GetValueOrDefault(subject) is { } before && last <= before.KnownUntil && lot.Failed <= before.Points
            ? null
            : new Notice(subject, lot.Failed, last, last, null, lot);
    }

    /// <summary>What all acknowledgements of one subject cover together.</summary>
    private sealed record Seen(DateTimeOffset KnownUntil, int Points);
}
