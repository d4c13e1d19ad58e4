namespace Traceability.Domain.Certificates;

/// <summary>Something that was done to the unit, or to a part in it, since its last certificate.</summary>
/// <param name="PartSerial">The part it was done to.</param>
/// <param name="At">When.</param>
/// <param name="What">What was done, in words.</param>
/// <param name="Why">The reason that was given; null where none is asked for.</param>
/// <param name="By">Who did it.</param>
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
/// <param name="Label">Name of the characteristic in words.</param>
/// <param name="Unit">Unit, null for a count or a word.</param>
/// <param name="Was">The digits that counted then; null when there was no value.</param>
/// <param name="Now">The digits that count now; null when there is no value any more.</param>
public sealed record ChangedValue(string Label, string? Unit, string? Was, string? Now);
