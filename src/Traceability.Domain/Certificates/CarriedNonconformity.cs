namespace Traceability.Domain.Certificates;

/// <summary>A nonconformity that was raised on the unit or on a part in it, and what was decided.</summary>
/// <param name="PartSerial">The part on which it was raised.</param>
/// <param name="StageTitle">The stage in which it was found; null when it was found outside a stage.</param>
/// <param name="RaisedAt">When it was raised.</param>
/// <param name="Description">What did not conform, in words.</param>
/// <param name="Disposition">What was decided, in a word: "rework", "repair", "concession", "regrade".</param>
/// <param name="Reason">Why it was decided so.</param>
/// <param name="DecidedBy">Who decided.</param>
/// <param name="DecidedAt">When.</param>
/// <param name="Limits">For a concession, the value accepted and the limit that it misses.</param>
public sealed record CarriedNonconformity(
    string PartSerial,
    string? StageTitle,
    DateTimeOffset RaisedAt,
    string Description,
    string Disposition,
    string Reason,
    string DecidedBy,
    DateTimeOffset DecidedAt,
    string? Limits = null
);
