using CsCheck;
using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Quality.Notices;
using Traceability.Domain.Records;

namespace Traceability.Domain.Tests.Quality.Notices;

/// <summary>A notice is raised once, by something new, and goes with what it told of.</summary>
public class NoticeBoardTests
{
    private static readonly DateTimeOffset Start = new(2026, 11, 1, 8, 0, 0, TimeSpan.Zero);
    private static readonly double[] Steady =
    [
        .. Enumerable
            .Range(0, 24)
            .Select(i =>
                (i % 4) switch
                {
                    0 => 900.0,
                    1 => 901,
                    2 => 900,
                    _ => 898.5,
                }
            ),
    ];

    [Fact]
    public void A_point_beyond_the_limits_raises_a_notice_that_names_it()
    {
        Notice notice = Assert.Single(Raised(Chart([.. Steady, 930])), n => n.Subject.Rule == NelsonRule.OneBeyondThreeSigma);
        Assert.Equal(
            ("diaphragm", "M-1", "verify", "ringHz"),
            (notice.Subject.Kind, notice.Subject.Model, notice.Subject.Stage, notice.Subject.Characteristic)
        );
        Assert.Equal((1, 930.0), (notice.Points, notice.Last!.Value));
    }

    [Fact]
    public void A_steady_chart_raises_none() =>
        Assert.DoesNotContain(Raised(Chart(Steady)), n => n.Subject.Rule == NelsonRule.OneBeyondThreeSigma);

    [Fact]
    public void Once_acknowledged_it_is_gone()
    {
        WatchedChart chart = Chart([.. Steady, 930]);
        Assert.Empty(Raised(chart, [.. Raised(chart).Select(Acknowledged)]));
    }

    [Fact]
    public void A_new_point_brings_it_back_under_a_new_key()
    {
        WatchedChart chart = Chart([.. Steady, 930]);
        Notice before = Rule1(Raised(chart));
        Notice after = Rule1(Raised(Chart([.. Steady, 930, 900, 931]), Acknowledged(before)));
        Assert.Equal((1, 931.0), (after.Points, after.Last!.Value));
        Assert.NotEqual(before.Key, after.Key);
    }

    [Fact]
    public void A_further_point_that_breaks_nothing_does_not()
    {
        Notice before = Rule1(Raised(Chart([.. Steady, 930])));
        Assert.DoesNotContain(
            Raised(Chart([.. Steady, 930, 900]), Acknowledged(before)),
            n => n.Subject.Rule == NelsonRule.OneBeyondThreeSigma
        );
    }

    /// <summary>
    /// With 120 quiet values more the limits narrow, and the 905 that was inside them is beyond: it was known before, so it is no news.
    /// </summary>
    [Fact]
    public void An_old_point_that_only_the_moved_limits_leave_outside_does_not_bring_it_back()
    {
        double[] wide = [.. Enumerable.Range(0, 24).Select(i => i % 2 == 0 ? 898.0 : 902), 905, 925];
        WatchedChart before = Chart(wide),
            after = Chart([.. wide, .. Enumerable.Range(0, 120).Select(i => i % 2 == 0 ? 900.0 : 900.2)]);
        Notice acknowledged = Rule1(Raised(before));
        Assert.Equal(925, acknowledged.Last!.Value);
        Assert.Equal(1, acknowledged.Points);
        Assert.Equal(2, Rule1(Raised(after)).Points);
        Assert.DoesNotContain(Raised(after, Acknowledged(acknowledged)), n => n.Subject.Rule == NelsonRule.OneBeyondThreeSigma);
    }

    [Fact]
    public void An_older_record_entered_after_the_acknowledgement_is_new()
    {
        WatchedChart chart = Chart([.. Steady, 930]);
        Notice before = Rule1(Raised(chart));
        WatchedPoint late = new(Guid.NewGuid(), "D-LATE", chart.Points[3].At, before.KnownUntil.AddDays(1), 870);
        WatchedChart after = chart with { Points = [.. chart.Points.Take(4), late, .. chart.Points.Skip(4)] };
        Assert.Equal("D-LATE", Rule1(Raised(after, Acknowledged(before))).Last!.Serial);
    }

    [Fact]
    public void A_correction_that_takes_the_break_away_takes_the_notice_away()
    {
        Assert.Contains(Raised(Chart([.. Steady, 930])), n => n.Subject.Rule == NelsonRule.OneBeyondThreeSigma);
        Assert.DoesNotContain(Raised(Chart([.. Steady, 900])), n => n.Subject.Rule == NelsonRule.OneBeyondThreeSigma);
    }

    [Fact]
    public void An_acknowledgement_silences_its_own_rule_and_chart_only()
    {
        WatchedChart chart = Chart([.. Steady, 930]),
            other = chart with { Characteristic = "coarseHz" };
        Notice acknowledged = Rule1(Raised(chart));
        Assert.Equal("coarseHz", Rule1(NoticeBoard.Of([chart, other], [], [Acknowledged(acknowledged)], Start)).Subject.Characteristic);
    }

    [Fact]
    public void Few_values_raise_nothing() => Assert.Empty(Raised(Chart([.. Steady.Take(WatchedChart.FewestValues - 2), 930])));

    [Fact]
    public void Values_that_never_vary_raise_nothing() => Assert.Empty(Raised(Chart([.. Enumerable.Repeat(0.0, 60)])));

    [Fact]
    public void A_break_from_before_the_news_is_none()
    {
        WatchedChart chart = Chart([.. Steady, 930, .. Steady]);
        Assert.DoesNotContain(NoticeBoard.Of([chart], [], [], chart.Points[^1].At), n => n.Subject.Rule == NelsonRule.OneBeyondThreeSigma);
    }

    [Fact]
    public void A_film_lot_that_stands_out_is_told_once_and_again_when_it_fails_again()
    {
        ComparedLot bad = new("F-1", true, 5, 10, Start, 0.01);
        Notice notice = Assert.Single(NoticeBoard.Of([], [bad], [], Start));
        Assert.Equal("F-1", notice.Subject.FilmLot);
        Assert.Empty(NoticeBoard.Of([], [bad], [Acknowledged(notice)], Start));
        Assert.Single(NoticeBoard.Of([], [bad with { Failed = 6 }], [Acknowledged(notice)], Start));
        Assert.Single(NoticeBoard.Of([], [bad with { LastFailedAt = Start.AddHours(1) }], [Acknowledged(notice)], Start));
        Assert.Empty(NoticeBoard.Of([], [bad with { Failed = 4 }], [Acknowledged(notice)], Start));
    }

    [Fact]
    public void A_film_lot_like_the_others_is_no_notice() =>
        Assert.Empty(NoticeBoard.Of([], [new("F-1", false, 5, 10, Start, 0.6)], [], Start));

    [Fact]
    public void Whatever_stands_is_silent_once_all_of_it_is_acknowledged() =>
        Gen.Double[-5, 5]
            .Array[0, 60]
            .Sample(values =>
            {
                WatchedChart chart = Chart(values);
                IReadOnlyList<Notice> raised = Raised(chart);
                Assert.Equal(raised.Count, raised.Select(n => n.Key).Distinct().Count());
                Assert.Empty(Raised(chart, [.. raised.Select(Acknowledged)]));
            });

    private static IReadOnlyList<Notice> Raised(WatchedChart chart, params NoticeAcknowledgement[] acknowledged) =>
        NoticeBoard.Of([chart], [], acknowledged, Start);

    private static Notice Rule1(IEnumerable<Notice> notices) => notices.Single(n => n.Subject.Rule == NelsonRule.OneBeyondThreeSigma);

    private static NoticeAcknowledgement Acknowledged(Notice notice) =>
        notice.Acknowledge(" seen ", new Stamp(Guid.Empty, notice.KnownUntil, notice.KnownUntil, Guid.NewGuid));

    private static WatchedChart Chart(double[] values) =>
        new(
            "diaphragm",
            "M-1",
            "verify",
            "ringHz",
            [
                .. values.Select(
                    (v, i) =>
                        new WatchedPoint(
                            new Guid(i + 1, 0, 0, new byte[8]),
                            $"D-{i}",
                            Start.AddHours(i),
                            Start.AddHours(i).AddMinutes(5),
                            v
                        )
                ),
            ]
        );
}
