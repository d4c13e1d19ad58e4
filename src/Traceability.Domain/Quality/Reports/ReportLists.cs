namespace Traceability.Domain.Quality.Reports;

/// <summary>A nonconformity that waited for its decision; its age in whole days.</summary>
/// <param name="AgeDays" example="9">How long it has waited, in whole days.</param>
/// <param name="Serial" example="DS-0201">The part.</param>
/// <param name="Model" example="TARN-1">Its model.</param>
/// <param name="StageTitle" example="Insulation test">The stage that raised it.</param>
/// <param name="Code" example="stage-failed">Its code.</param>
/// <param name="Description" example="57 GΩ is below 100 GΩ">What was found.</param>
/// <param name="RaisedAt" example="2026-03-22T10:15:00Z">When it was raised.</param>
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
/// <param name="Lines">Open nonconformities, the oldest first.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record WaitingSection(IReadOnlyList<WaitingLine> Lines, string? None, string Computed);

/// <summary>Holds put at one moment for one reason, with everything they stop.</summary>
/// <param name="AgeDays" example="4">How long it has lasted, in whole days.</param>
/// <param name="Lots" example="1">How many lots it stops.</param>
/// <param name="Parts" example="6">How many parts it stops.</param>
/// <param name="Instruments" example="0">How many instruments it stops.</param>
/// <param name="What" example="F-2603">What it stops, in words.</param>
/// <param name="Reason" example="film peels at the edge">Why.</param>
/// <param name="HeldAt" example="2026-03-27T09:00:00Z">When it was put.</param>
/// <param name="HeldBy" example="Perrin Aldmoor">Who put it.</param>
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
/// <param name="Holds" example="3">How many holds are in force.</param>
/// <param name="Lines">Holds in force, the oldest first.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record HoldSection(int Holds, IReadOnlyList<HoldLine> Lines, string? None, string Computed);

/// <summary>A unit that came back.</summary>
/// <param name="Serial" example="US-0004">The unit.</param>
/// <param name="Model" example="TARN-1">Its model.</param>
/// <param name="ReturnedAt" example="2026-03-12T13:00:00Z">When it came back.</param>
/// <param name="Complaint" example="crackles when it is damp">What the customer said.</param>
/// <param name="Found" example="insulation is low">What was found.</param>
/// <param name="Done" example="capsule replaced">What was done.</param>
public sealed record ReturnLine(string Serial, string Model, DateTimeOffset ReturnedAt, string Complaint, string Found, string Done);

/// <summary>Returns of the month in their order.</summary>
/// <param name="Lines">Returns of the month, in their order.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record ReturnSection(IReadOnlyList<ReturnLine> Lines, string? None, string Computed);

/// <summary>An instrument that is due, out of calibration, found wrong or on hold.</summary>
/// <param name="Code" example="CAP-02">The instrument's code.</param>
/// <param name="Title" example="Capacitance meter 2">Its title.</param>
/// <param name="CalibratedOn" example="2026-01-10">Its last good calibration.</param>
/// <param name="DueOn" example="2026-04-10">When the next is due.</param>
/// <param name="Why" example="due in 10 days">What it needs, in words.</param>
public sealed record InstrumentLine(string Code, string Title, DateOnly? CalibratedOn, DateOnly? DueOn, string Why);

/// <summary>Instruments that need something, the most pressing first.</summary>
/// <param name="Instruments" example="17">How many instruments there are.</param>
/// <param name="DueUntil" example="2026-04-30">Until when what falls due is listed.</param>
/// <param name="Lines">Instruments that need something, the most pressing first.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record InstrumentSection(
    int Instruments,
    DateOnly DueUntil,
    IReadOnlyList<InstrumentLine> Lines,
    string? None,
    string Computed
);
