using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Quality.Pareto;

namespace Traceability.Domain.Quality.Reports;

/// <summary>Units finished and shipped, all and by model.</summary>
public sealed record OutputSection(
    int Finished,
    int Shipped,
    int SentAgain,
    IReadOnlyList<UnitOutput> ByModel,
    string? None,
    string Computed
);

/// <summary>
/// A stage's first-pass yield in the month and in the month before. <c>P</c> and <c>AdjustedP</c> are null where the two cannot be
/// compared.
/// </summary>
public sealed record StageYieldLine(
    string Kind,
    string Stage,
    string Title,
    ReportedShare Share,
    ReportedShare Before,
    double? P,
    double? AdjustedP,
    string Change
);

/// <summary>The yields of a model: over all its stages, and stage by stage.</summary>
public sealed record ModelYield(
    string Model,
    ReportedShare FirstPass,
    ReportedShare FirstPassBefore,
    ReportedShare RolledThroughput,
    ReportedShare RolledThroughputBefore,
    IReadOnlyList<StageYieldLine> Stages
);

/// <summary>First-pass and rolled-throughput yields; <c>MonthBefore</c> names what they are compared with.</summary>
public sealed record YieldSection(string MonthBefore, IReadOnlyList<ModelYield> Models, string? None, string Computed);

/// <summary>A stage of a film lot: how many reached it, and how many of those failed there.</summary>
public sealed record FilmStageLine(string Stage, string Title, int Reached, int Failed);

/// <summary>
/// One film lot: <c>InWork</c> are on their way, <c>Stages</c> in the order of the work, <c>FirstPass</c> the yield over them.
/// <c>Against</c> says in words how it compares with the rest, or why it cannot be compared; <c>Sentence</c> says the line.
/// </summary>
public sealed record FilmLotLine(
    string Lot,
    int Started,
    int InWork,
    int Judged,
    int Failed,
    IReadOnlyDictionary<string, int> FailedAt,
    IReadOnlyList<FilmStageLine> Stages,
    ReportedShare FirstPass,
    double? AdjustedP,
    string Against,
    bool StandsOut,
    string Sentence
);

/// <summary>Film lots of the month, and those of the twelve months up to it that stand out.</summary>
public sealed record FilmLotSection(
    IReadOnlyList<FilmLotLine> Lots,
    string Year,
    IReadOnlyList<FilmLotLine> OutstandingInTheYear,
    string? None,
    string Computed
);

/// <summary>Failure codes, the most frequent first.</summary>
public sealed record FailureSection(int Failures, int VitalFew, IReadOnlyList<ParetoBar> Bars, string? None, string Computed);

/// <summary>A nonconformity that waited for its decision; its age in whole days.</summary>
public sealed record WaitingLine(
    int AgeDays,
    string Serial,
    string Model,
    string StageTitle,
    string Code,
    string Description,
    DateTimeOffset RaisedAt
);

/// <summary>Open nonconformities, the oldest first.</summary>
public sealed record WaitingSection(IReadOnlyList<WaitingLine> Lines, string? None, string Computed);

/// <summary>Holds put at one moment for one reason, with everything they stop.</summary>
public sealed record HoldLine(
    int AgeDays,
    int Lots,
    int Parts,
    int Instruments,
    string What,
    string Reason,
    DateTimeOffset HeldAt,
    string HeldBy
);

/// <summary>Holds in force, the oldest first.</summary>
public sealed record HoldSection(int Holds, IReadOnlyList<HoldLine> Lines, string? None, string Computed);

/// <summary>A unit that came back.</summary>
public sealed record ReturnLine(string Serial, string Model, DateTimeOffset ReturnedAt, string Complaint, string Found, string Done);

/// <summary>Returns of the month in their order.</summary>
public sealed record ReturnSection(IReadOnlyList<ReturnLine> Lines, string? None, string Computed);

/// <summary>The yields of one month over all models.</summary>
public sealed record TrendMonth(string Month, string Title, ReportedShare FirstPass, ReportedShare RolledThroughput);

/// <summary>Yield over twelve months, the oldest first.</summary>
public sealed record TrendSection(IReadOnlyList<TrendMonth> Months, string? None, string Computed);

/// <summary>One point of a control chart; <c>Rules</c> are the numbers of Nelson's rules that it completes.</summary>
public sealed record ReportedPoint(string Serial, DateTimeOffset At, double Value, bool Met, bool InMonth, IReadOnlyList<int> Rules);

/// <summary>
/// A control chart of individuals: <c>Place</c> is the model, kind of part and stage. <c>Sentence</c> says on how many values it stands and
/// which rules were broken in the month.
/// </summary>
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
    public string Title => $"{Place}: {Characteristic}{(Unit.Length > 0 ? $", {Unit}" : "")}";
}

/// <summary>Characteristics of one stage that are not drawn, each with how many values it has and whether a rule was broken.</summary>
public sealed record LeftOutStage(string Place, IReadOnlyList<string> Characteristics);

/// <summary>The control charts that are drawn, and in words those that are left out.</summary>
public sealed record ControlSection(
    DateTimeOffset From,
    IReadOnlyList<ReportedChart> Charts,
    IReadOnlyList<LeftOutStage> LeftOut,
    string? None,
    string Computed
);

/// <summary>An instrument that is due, out of calibration, found wrong or on hold.</summary>
public sealed record InstrumentLine(string Code, string Title, DateOnly? CalibratedOn, DateOnly? DueOn, string Why);

/// <summary>Instruments that need something, the most pressing first.</summary>
public sealed record InstrumentSection(
    int Instruments,
    DateOnly DueUntil,
    IReadOnlyList<InstrumentLine> Lines,
    string? None,
    string Computed
);
