using CsCheck;
using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Returns;

namespace Traceability.Domain.Tests.Quality;

public class ReturnsProperties
{
    private static readonly Gen<List<Lifetime>> AnyLifetimes = Gen.Select(
        Gen.Int[1, 30],
        Gen.Bool,
        (time, failed) => new Lifetime(time, failed)
    ).List[1, 40];

    [Fact]
    public void Survival_never_rises_and_its_interval_contains_it() =>
        AnyLifetimes.Sample(units =>
        {
            KaplanMeier curve = KaplanMeier.Of(units).Value;
            double[] survival = [.. curve.Steps.Select(s => s.Survival)];
            Assert.Equal(survival.OrderDescending(), survival);
            Assert.All(curve.Steps, s => Assert.True(s.Interval.Contains(s.Survival) && !double.IsNaN(s.StandardError ?? 0)));
        });

    [Fact]
    public void Without_censoring_survival_is_the_share_still_good() =>
        Gen.Int[1, 20]
            .List[1, 30]
            .Sample(times =>
            {
                KaplanMeier curve = KaplanMeier.Of([.. times.Select(t => new Lifetime(t, true))]).Value;
                Assert.All(times, t => Assert.Equal(times.Count(x => x > t) / (double)times.Count, curve.SurvivalAt(t), 1e-12));
            });

    [Fact]
    public void When_nothing_failed_all_survive_and_there_is_no_median()
    {
        KaplanMeier curve = KaplanMeier.Of([new(5, false), new(9, false)]).Value;
        Assert.Equal((1, null), (curve.SurvivalAt(9), curve.MedianTime));
    }

    [Fact]
    public void A_curve_that_rests_on_one_half_is_read_in_the_middle() =>
        Assert.Equal(3, KaplanMeier.Of([new(1, true), new(2, true), new(4, true), new(5, true)]).Value.MedianTime);

    [Fact]
    public void The_log_rank_test_does_not_depend_on_the_order_of_groups() =>
        Gen.Select(AnyLifetimes, AnyLifetimes, AnyLifetimes)
            .Sample(
                (a, b, c) =>
                {
                    Computed<ChiSquareResult> one = LogRank.Test([a, b, c]),
                        other = LogRank.Test([c, a, b]);
                    Assert.Equal(one.IsKnown, other.IsKnown);
                    if (one.IsKnown)
                    {
                        Assert.Equal(one.Value.P, other.Value.P, 1e-7);
                    }
                }
            );

    [Fact]
    public void A_group_compared_with_itself_shows_no_difference() =>
        AnyLifetimes
            .Where(g => g.Any(l => l.Failed))
            .Sample(group => Assert.Equal(1, LogRank.Test([group, group]).Match(r => r.P, _ => 1), 1e-9));

    [Fact]
    public void Without_failures_groups_cannot_be_compared() =>
        Assert.False(
            LogRank
                .Test([
                    [new(5, false)],
                    [new(7, false)],
                ])
                .IsKnown
        );

    [Fact]
    public void The_weibull_fit_follows_the_unit_of_time() =>
        AnyLifetimes
            .Where(g => g.Count(l => l.Failed) > 1 && g.Where(l => l.Failed).Min(l => l.Time) < g.Max(l => l.Time))
            .Sample(units =>
            {
                WeibullFit hours = WeibullFit.Of(units).Value,
                    days = WeibullFit.Of([.. units.Select(u => u with { Time = u.Time / 24 })]).Value;
                Assert.Equal(1, hours.Shape / days.Shape, 1e-8);
                Assert.Equal(24, hours.Scale / days.Scale, 1e-6);
                Assert.True(hours.ShapeInterval.Contains(hours.Shape) && hours.ScaleInterval.Contains(hours.Scale));
                Assert.Equal(0.1, 1 - hours.Reliability(hours.TimeUntilFailed(0.1)), 1e-10);
            });

    [Fact]
    public void The_weibull_fit_is_the_most_likely_one() =>
        AnyLifetimes
            .Where(g => g.Count(l => l.Failed) > 1 && g.Where(l => l.Failed).Min(l => l.Time) < g.Max(l => l.Time))
            .Sample(units =>
            {
                WeibullFit fit = WeibullFit.Of(units).Value;
                Assert.Equal(fit.LogLikelihood, LogLikelihood(fit.Shape, fit.Scale), 1e-7);
                Assert.All(
                    [(1.01, 1.0), (0.99, 1.0), (1.0, 1.01), (1.0, 0.99)],
                    ((double Shape, double Scale) f) =>
                        Assert.True(LogLikelihood(fit.Shape * f.Shape, fit.Scale * f.Scale) <= fit.LogLikelihood + 1e-9)
                );

                double LogLikelihood(double shape, double scale) =>
                    units.Sum(u =>
                        (u.Failed ? Math.Log(shape / scale) + (shape - 1) * Math.Log(u.Time / scale) : 0) - Math.Pow(u.Time / scale, shape)
                    );
            });

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Fewer_than_two_failures_are_not_enough_for_a_weibull_fit(int failures) =>
        Assert.Equal(
            $"not enough data: needs at least 2 failures, has {failures}",
            WeibullFit.Of([.. Enumerable.Range(0, 9).Select(i => new Lifetime(i + 1, i < failures))]).Missing!.ToString()
        );

    [Fact]
    public void Observation_that_ended_with_a_failure_has_the_higher_lower_bound() =>
        Gen.Int[1, 40]
            .Sample(r =>
                Assert.True(
                    ExponentialLife.Of(r, 1000, ObservationEnd.AtAFailure).Value.Interval.Lower
                        > ExponentialLife.Of(r, 1000).Value.Interval.Lower
                )
            );
}
