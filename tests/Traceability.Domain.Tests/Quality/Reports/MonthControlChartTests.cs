using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using static Traceability.Domain.Tests.Quality.Reports.AMonth;

namespace Traceability.Domain.Tests.Quality.Reports;

public class MonthControlChartTests
{
    [Fact]
    public void Charts_with_broken_rules_come_first_and_those_left_out_are_named()
    {
        var charts = MonthlyReport
            .Of(Facts() with { Series = [.. Enumerable.Range(1, 8).Select(i => Steady($"c{i}", 10 + i)), Jumping()] })
            .Control;
        Assert.Equal(6, charts.Charts.Count);
        Assert.EndsWith("jumps, pF", charts.Charts[0].Title, StringComparison.Ordinal);
        Assert.Contains(1, charts.Charts[0].RuleBreaks.Keys);
        Assert.Contains("rule 1 at 1 point", charts.Charts[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("1 value of the month did not meet", charts.Charts[0].Sentence, StringComparison.Ordinal);
        var left = Assert.Single(charts.LeftOut);
        Assert.Equal(("M capsule, stack", 3), (left.Place, left.Characteristics.Count));
        Assert.All(left.Characteristics, l => Assert.Contains("no rule broken", l, StringComparison.Ordinal));
    }

    [Fact]
    public void Values_that_are_all_equal_break_no_rule()
    {
        var equal = Steady("equal", 30);
        var chart = Assert.Single(
            MonthlyReport
                .Of(Facts() with { Series = [equal with { Points = [.. equal.Points.Select(p => p with { Value = 7 })] }] })
                .Control.Charts
        );
        Assert.Empty(chart.RuleBreaks);
    }

    [Fact]
    public void A_rule_broken_before_the_month_is_not_counted_as_the_months()
    {
        var before = Jumping() with
        {
            Points = [.. Jumping().Points.Select(p => p with { At = p.At.AddDays(-20) }), new("P-last", At(10, 15), 90, true)],
        };
        var chart = Assert.Single(MonthlyReport.Of(Facts() with { Series = [before] }).Control.Charts);
        Assert.Empty(chart.RuleBreaks);
        Assert.Equal((1, 22), (chart.ValuesInMonth, chart.Values));
    }

    [Fact]
    public void A_characteristic_without_a_value_in_the_month_is_no_matter_of_its_report()
    {
        var old = Jumping() with { Points = [.. Jumping().Points.Select(p => p with { At = p.At.AddDays(-60) })] };
        var control = MonthlyReport.Of(Facts() with { Series = [old] }).Control;
        Assert.Empty(control.Charts);
        Assert.Equal("No main characteristic was measured in October 2026.", control.None);
    }
}
