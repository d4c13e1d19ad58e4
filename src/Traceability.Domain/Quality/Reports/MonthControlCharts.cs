using Traceability.Domain.Quality.Charts;

namespace Traceability.Domain.Quality.Reports;

/// <summary>The control charts that need a look: those whose rules were broken in the month first.</summary>
internal static class MonthControlCharts
{
    private const int MostCharts = 6;

    /// About as many points as a picture on paper can tell apart.
    private const int MostPoints = 400;

    /// The month and the two before it: limits from the few values of a single month would be little better than a guess.
    private const int MonthsBefore = 2;

    public static ControlSection Of(MonthlyReportFacts facts, MonthWords words)
    {
        var ranked = facts
            .Series.Where(s => s.Points.Any(p => p.At >= facts.Month.From))
            .Select(s => ChartOf(s, facts, words))
            .OrderByDescending(c => c.RuleBreaks.Values.Sum())
            .ThenByDescending(c => c.NotMet)
            .ThenByDescending(c => c.ValuesInMonth)
            .ThenBy(c => c.Title, StringComparer.Ordinal)
            .ToArray();
        ReportedChart[] drawn = [.. ranked.Where(c => c.Limits is not null).Take(MostCharts)];
        return new(
            words.Local(facts.Calendar.StartOf(facts.Month.FirstOf(MonthsBefore))),
            drawn,
            [
                .. ranked
                    .Except(drawn)
                    .GroupBy(c => c.Place)
                    .Select(g => new LeftOutStage(g.Key, [.. g.Select(c => $"{c.Characteristic} ({LeftOut(c)})")])),
            ],
            ranked.Length == 0 ? $"No main characteristic was measured {words.InTheMonth}." : null,
            $"Values of {facts.Month.Title} and the two months before it, in the order of work, corrected values as they count now,"
                + " lower bounds left out. Individuals: mean and 3 sigma, sigma from the mean moving range / 1.128379; "
                + $"Nelson's eight rules, counted where the point that completes one lies in {facts.Month.Title}. Main characteristics"
                + $" are those that the birth certificate shows and that have limits; at most {MostCharts} are drawn: most rule breaks"
                + " first, then most values outside their limits, "
                + "then most values in the month."
        );
    }

    private static ReportedChart ChartOf(MeasuredSeries series, MonthlyReportFacts facts, MonthWords words)
    {
        var c = series.Characteristic;
        var place = $"{series.Model} {series.Kind.Replace('-', ' ')}, {words.TitleOf(series.Model, series.Kind, series.Stage)}";
        double[] values = [.. series.Points.Select(p => p.Value)];
        bool[] inMonth = [.. series.Points.Select(p => p.At >= facts.Month.From)];
        var charted = IndividualsChart.Of(values).Match(known => known, _ => (IndividualsChart?)null);
        var breaks = (charted?.RuleBreaks ?? []).ToLookup(b => b.Index, b => (int)b.Rule);
        var counted = breaks
            .Where(b => inMonth[b.Key])
            .SelectMany(b => b)
            .GroupBy(r => r)
            .OrderBy(g => g.Key)
            .ToDictionary(g => g.Key, g => g.Count());
        int[] marked = [.. breaks.Select(b => b.Key).Union(Enumerable.Range(0, values.Length).Where(i => !series.Points[i].Met))];
        var kept = ChartThinning.Of(values, MostPoints, marked);
        var chart = new ReportedChart(
            place,
            c.Label,
            MonthWords.Symbol(c.Unit),
            values.Length,
            inMonth.Count(m => m),
            charted?.Individuals,
            charted?.Sigma,
            counted,
            series.Points.Where((p, i) => inMonth[i] && !p.Met).Count(),
            [
                .. kept.Kept.Select(i => new ReportedPoint(
                    series.Points[i].Serial,
                    words.Local(series.Points[i].At),
                    values[i],
                    series.Points[i].Met,
                    inMonth[i],
                    [.. breaks[i]]
                )),
            ],
            ""
        );
        return chart with { Sentence = SentenceOf(chart, series, facts.Month.Title, kept.Note) };
    }

    private static string SentenceOf(ReportedChart chart, MeasuredSeries series, string month, string? thinned)
    {
        var unit = chart.Unit.Length == 0 ? "" : $" {chart.Unit}";
        var limits = chart.Limits is { } l
            ? $"mean {MonthWords.Number(l.Centre)}{unit}, 3 sigma limits {MonthWords.Number(l.Lower)} to"
                + $" {MonthWords.Number(l.Upper)}{unit}"
            : "too few values for limits";
        var broken =
            chart.RuleBreaks.Count == 0
                ? "no rule broken in the month"
                : "rules broken in the month: "
                    + string.Join(", ", chart.RuleBreaks.Select(r => $"rule {r.Key} at {MonthWords.Counted(r.Value, "point")}"));
        var met =
            chart.NotMet == 0
                ? "every value of the month met its limits"
                : $"{MonthWords.Counted(chart.NotMet, "value")} of the month did not meet the limits of the route";
        return $"{MonthWords.Counted(chart.Values, "value")}, {chart.ValuesInMonth} of them in {month}; {limits}; {broken}; {met}."
            + (series.BoundsLeftOut > 0 ? $" {MonthWords.Counted(series.BoundsLeftOut, "lower bound")} left out." : "")
            + (thinned is null ? "" : $" {thinned}");
    }

    private static string LeftOut(ReportedChart chart)
    {
        var breaks = chart.RuleBreaks.Values.Sum();
        return $"{MonthWords.Counted(chart.ValuesInMonth, "value")}, "
            + (
                chart.Limits is null ? "too few for limits"
                : breaks == 0 ? "no rule broken"
                : MonthWords.Counted(breaks, "rule break")
            );
    }
}
