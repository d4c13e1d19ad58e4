using Traceability.Domain.Quality.Charts;

namespace Traceability.Domain.Quality.Reports;

/// <summary>The yields of one month over all models.</summary>
/// <param name="Month" example="2026-03">The month.</param>
/// <param name="Title" example="Mar 2026">The month in words.</param>
/// <param name="FirstPass">First-pass yield over all stages.</param>
/// <param name="RolledThroughput">Product of the stages' first-pass yields.</param>
public sealed record TrendMonth(string Month, string Title, ReportedShare FirstPass, ReportedShare RolledThroughput);

/// <summary>Yield over twelve months, the oldest first.</summary>
/// <param name="Months">Twelve months, the oldest first.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record TrendSection(IReadOnlyList<TrendMonth> Months, string? None, string Computed);

/// <summary>One point of a control chart; <c>Rules</c> are the numbers of Nelson's rules that it completes.</summary>
/// <param name="Serial" example="DS-0201">The part.</param>
/// <param name="At" example="2026-03-20T08:30:00Z">When it was measured.</param>
/// <param name="Value" example="1101.5">The value, in the chart's unit.</param>
/// <param name="Met" example="true">True when it is inside its limits.</param>
/// <param name="InMonth" example="true">True when it is of the month of the report.</param>
/// <param name="Rules">Numbers of Nelson's rules that it completes.</param>
public sealed record ReportedPoint(string Serial, DateTimeOffset At, double Value, bool Met, bool InMonth, IReadOnlyList<int> Rules);

/// <summary>
/// A control chart of individuals: <c>Place</c> is the model, kind of part and stage. <c>Sentence</c> says on how many values it stands and
/// which rules were broken in the month.
/// </summary>
/// <param name="Place" example="TARN-1 diaphragm, Tune">Model, kind of part and stage.</param>
/// <param name="Characteristic" example="Resonance in the jig">What is drawn.</param>
/// <param name="Unit" example="Hz">Its unit.</param>
/// <param name="Values" example="84">On how many values it stands.</param>
/// <param name="ValuesInMonth" example="31">How many of them are of the month.</param>
/// <param name="Limits">Its limits; null when there are too few values.</param>
/// <param name="Sigma" example="4.2">The standard deviation that the limits come from.</param>
/// <param name="RuleBreaks">How often each rule was broken in the month.</param>
/// <param name="NotMet" example="1">Values of the month outside their own limits.</param>
/// <param name="Points">The points that are drawn, in the order of the work.</param>
/// <param name="Sentence" example="84 values; no rule was broken.">What the chart says, in words.</param>
public sealed record ReportedChart(
    string Place,
    string Characteristic,
    string Unit,
    int Values,
    int ValuesInMonth,
    ChartLimits? Limits,
    double? Sigma,
    IReadOnlyDictionary<int, int> RuleBreaks,
    int NotMet,
    IReadOnlyList<ReportedPoint> Points,
    string Sentence
)
{
    /// <summary>What is drawn, with its unit.</summary>
    /// <example>TARN-1 diaphragm, Tune: Resonance in the jig, Hz</example>
    public string Title => $"{Place}: {Characteristic}{(Unit.Length > 0 ? $", {Unit}" : "")}";
}

/// <summary>Characteristics of one stage that are not drawn, each with how many values it has and whether a rule was broken.</summary>
/// <param name="Place" example="TARN-1 capsule, Capacitance">Model, kind of part and stage.</param>
/// <param name="Characteristics">What is not drawn, each with its number of values.</param>
public sealed record LeftOutStage(string Place, IReadOnlyList<string> Characteristics);

/// <summary>The control charts that are drawn, and in words those that are left out.</summary>
/// <param name="From" example="2026-01-01T00:00:00Z">From when values are taken.</param>
/// <param name="Charts">The charts that are drawn.</param>
/// <param name="LeftOut">What is left out, in words.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record ControlSection(
    DateTimeOffset From,
    IReadOnlyList<ReportedChart> Charts,
    IReadOnlyList<LeftOutStage> LeftOut,
    string? None,
    string Computed
);
