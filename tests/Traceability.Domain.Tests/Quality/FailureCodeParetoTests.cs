using CsCheck;
using Traceability.Domain.Quality.Pareto;

namespace Traceability.Domain.Tests.Quality;

public class FailureCodeParetoTests
{
    private static readonly Gen<List<KeyValuePair<string, int>>> AnyCounts = Gen.Select(
        Gen.Int[0, 9],
        Gen.Int[0, 50],
        (code, count) => KeyValuePair.Create($"code {code}", count)
    ).List[0, 20];

    [Fact]
    public void The_most_frequent_code_stands_first() =>
        Assert.Equal(
            [new ParetoBar("leak", 6, 0.6, 0.6), new ParetoBar("dust", 3, 0.3, 0.9), new ParetoBar("wrinkle", 1, 0.1, 1)],
            FailureCodePareto.Of([new("dust", 3), new("wrinkle", 1), new("leak", 4), new("leak", 2), new("noise", 0)]).Bars
        );

    [Fact]
    public void The_vital_few_make_up_the_share_asked_for()
    {
        FailureCodePareto pareto = FailureCodePareto.Of([new("dust", 3), new("wrinkle", 1), new("leak", 6)]);
        Assert.Equal(["leak", "dust"], pareto.VitalFew().Select(b => b.Code));
        Assert.Equal(["leak"], pareto.VitalFew(0.6).Select(b => b.Code));
    }

    [Fact]
    public void No_failures_give_an_empty_chart() => Assert.Empty(FailureCodePareto.Of([]).VitalFew());

    [Fact]
    public void Bars_fall_and_add_up() =>
        AnyCounts.Sample(counts =>
        {
            FailureCodePareto pareto = FailureCodePareto.Of(counts);
            Assert.Equal(pareto.Bars.Select(b => b.Count).OrderDescending(), pareto.Bars.Select(b => b.Count));
            Assert.Equal(counts.Sum(c => c.Value), pareto.Bars.Sum(b => b.Count));
            Assert.True(pareto.Bars.Count == 0 || pareto.Bars[^1].Cumulative == 1);
        });

    [Fact]
    public void The_order_of_the_counts_changes_nothing() =>
        AnyCounts.Sample(counts => Assert.Equal(FailureCodePareto.Of(counts).Bars, FailureCodePareto.Of(Enumerable.Reverse(counts)).Bars));
}
