using Traceability.Domain.Gates;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Reports;

/// <summary>
/// Units of one model: finished for the first time, and sent out; <c>SentAgain</c> of those had left before and come back.
/// </summary>
/// <param name="Model" example="TARN-1">The model.</param>
/// <param name="Finished" example="7">Units that passed their last stage in the month.</param>
/// <param name="Shipped" example="6">Units that left in the month.</param>
/// <param name="SentAgain" example="1">Of those, units that had left before.</param>
public sealed record UnitOutput(string Model, int Finished, int Shipped, int SentAgain);

/// <summary>First verdicts of one model at one stage: how many, and how many of them a pass.</summary>
public sealed record StageVerdicts(string Model, string Kind, string Stage, int Judged, int PassedFirst);

/// <summary>The same for all models in one month, "2026-10".</summary>
public sealed record MonthVerdicts(string Month, string Kind, string Stage, int Judged, int PassedFirst);

/// <summary>A nonconformity that waited for its decision at the end of the report's time.</summary>
public sealed record WaitingNonconformity(
    string Serial,
    string Model,
    string Kind,
    string? Stage,
    string Code,
    string Description,
    DateTimeOffset RaisedAt
);

/// <summary>A hold in force at the end of the report's time. <c>Subject</c> is "lot", "part" or "instrument".</summary>
public sealed record StandingHold(string Subject, string Code, string Reason, DateTimeOffset HeldAt, string HeldBy);

/// <summary>A unit that came back in the month; <c>Action</c> is null while the return is open.</summary>
public sealed record ReturnedInMonth(
    string Serial,
    string Model,
    DateTimeOffset ReturnedAt,
    string Complaint,
    IReadOnlyList<string> Findings,
    string? Action
);

/// <summary>One value of a characteristic in the order of work.</summary>
public sealed record SeriesPoint(string Serial, DateTimeOffset At, double Value, bool Met);

/// <summary>The values of one characteristic of one model; values that are only a bound are left out and counted.</summary>
public sealed record MeasuredSeries(
    string Model,
    string Kind,
    string Stage,
    Characteristic Characteristic,
    IReadOnlyList<SeriesPoint> Points,
    int BoundsLeftOut
);

/// <summary>Everything that a monthly report is made from.</summary>
public sealed record MonthlyReportFacts
{
    /// <summary>The workshop that reports.</summary>
    public required string WorkshopName { get; init; }

    /// <summary>Set when the data are invented.</summary>
    public string? InventedDataNotice { get; init; }

    /// <summary>The month, and up to when it is told.</summary>
    public required ReportMonth Month { get; init; }

    /// <summary>When the report is drawn up; UTC.</summary>
    public required DateTimeOffset DrawnUpAt { get; init; }

    /// <summary>The workshop's time zone.</summary>
    public required WorkshopCalendar Calendar { get; init; }

    /// <summary>The routes in force at the end, which give stages their order and their titles.</summary>
    public IReadOnlyList<Route> Routes { get; init; } = [];

    /// <summary>Units finished and shipped in the month.</summary>
    public IReadOnlyList<UnitOutput> Output { get; init; } = [];

    /// <summary>First verdicts of stages begun in the month.</summary>
    public IReadOnlyList<StageVerdicts> Stages { get; init; } = [];

    /// <summary>The same of the month before.</summary>
    public IReadOnlyList<StageVerdicts> StagesBefore { get; init; } = [];

    /// <summary>The same of the twelve months up to this one.</summary>
    public IReadOnlyList<MonthVerdicts> Months { get; init; } = [];

    /// <summary>The diaphragms whose film was fitted in the month.</summary>
    public FilmCohort Film { get; init; } = FilmCohort.Empty;

    /// <summary>The same for the twelve months up to this one.</summary>
    public FilmCohort FilmOfTheYear { get; init; } = FilmCohort.Empty;

    /// <summary>Nonconformities raised in the month by their code.</summary>
    public IReadOnlyList<KeyValuePair<string, int>> FailureCodes { get; init; } = [];

    /// <summary>Nonconformities without a decision at the end.</summary>
    public IReadOnlyList<WaitingNonconformity> Waiting { get; init; } = [];

    /// <summary>Holds in force at the end.</summary>
    public IReadOnlyList<StandingHold> Holds { get; init; } = [];

    /// <summary>Units that came back in the month.</summary>
    public IReadOnlyList<ReturnedInMonth> Returns { get; init; } = [];

    /// <summary>
    /// The main characteristics, those that the birth certificate shows and that have limits, with their values of the three months up to
    /// this one.
    /// </summary>
    public IReadOnlyList<MeasuredSeries> Series { get; init; } = [];

    /// <summary>All instruments.</summary>
    public IReadOnlyList<InstrumentStanding> Instruments { get; init; } = [];

    /// <summary>
    /// Codes of instruments that measured something before the end although they were registered later: work that was entered afterwards.
    /// </summary>
    public IReadOnlySet<string> InstrumentsUsed { get; init; } = new HashSet<string>();
}
