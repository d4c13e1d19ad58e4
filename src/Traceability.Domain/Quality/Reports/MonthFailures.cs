using Traceability.Domain.Quality.Pareto;

namespace Traceability.Domain.Quality.Reports;

/// <summary>What failed most often in the month.</summary>
internal static class MonthFailures
{
    public static FailureSection Of(MonthlyReportFacts facts, MonthWords words)
    {
        var pareto = FailureCodePareto.Of(facts.FailureCodes);
        return new(
            pareto.Total,
            pareto.Total == 0 ? 0 : pareto.VitalFew().Count,
            pareto.Bars,
            pareto.Total == 0 ? $"No nonconformity was raised {words.InTheMonth}." : null,
            "Every nonconformity raised in the month counts once, under its code; where the code only says that a stage failed, under"
                + " the stage. Vital few: the fewest codes that make up 80 % of all."
        );
    }
}
