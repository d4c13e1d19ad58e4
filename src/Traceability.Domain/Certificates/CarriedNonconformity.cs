namespace Traceability.Domain.Certificates;

/// <summary>A nonconformity that was raised on the unit or on a part in it, and what was decided.</summary>
/// <param name="PartSerial" example="CD-0071">The part on which it was raised.</param>
/// <param name="StageTitle" example="Insulation">The stage in which it was found; null when it was found outside a stage.</param>
/// <param name="RaisedAt" example="2026-01-31T14:20:00+01:00">When it was raised.</param>
/// <param name="Description" example="Insulation resistance below its limit">What did not conform, in words.</param>
/// <param name="Disposition" example="rework">What was decided, in a word: "rework", "repair", "concession", "regrade".</param>
/// <param name="Reason" example="dust on the back plate; cleaned and measured again">Why it was decided so.</param>
/// <param name="DecidedBy" example="Quality lead 1">Who decided.</param>
/// <param name="DecidedAt" example="2026-01-31T14:20:00+01:00">When.</param>
/// <param name="Limits" example="395 GOhm, at least 400 GOhm">For a concession, the value accepted and the limit that it misses.</param>
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
