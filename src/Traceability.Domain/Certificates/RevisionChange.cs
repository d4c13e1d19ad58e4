namespace Traceability.Domain.Certificates;

/// <summary>Something that was done to the unit, or to a part in it, since its last certificate.</summary>
/// <param name="PartSerial" example="CD-0071">The part it was done to.</param>
/// <param name="At" example="2026-01-31T14:20:00+01:00">When.</param>
/// <param name="What" example="Insulation done again">What was done, in words.</param>
/// <param name="Why" example="came back with crackle">The reason that was given; null where none is asked for.</param>
/// <param name="By" example="Builder 2">Who did it.</param>
/// <param name="Values">Where a stage was done again, the values on the certificate that came out another.</param>
public sealed record RevisionChange(
    string PartSerial,
    DateTimeOffset At,
    string What,
    string? Why,
    string By,
    IReadOnlyList<ChangedValue> Values
);

/// <summary>A value that is another than on the last certificate.</summary>
/// <param name="Label" example="Insulation resistance">Name of the characteristic in words.</param>
/// <param name="Unit" example="GOhm">Unit, null for a count or a word.</param>
/// <param name="Was" example="412.50">The digits that counted then; null when there was no value.</param>
/// <param name="Now" example="655.00">The digits that count now; null when there is no value any more.</param>
public sealed record ChangedValue(string Label, string? Unit, string? Was, string? Now);
