namespace Traceability.Domain.Certificates;

/// <summary>What the unit is and how long it was in the making.</summary>
/// <param name="Serial" example="US-0034">Serial as engraved on the plate.</param>
/// <param name="Model" example="TARN-2">Model, as the workshop calls it.</param>
/// <param name="Kind" example="microphone, dual diaphragm">Kind of part in words, such as "microphone, dual diaphragm".</param>
/// <param name="Grade" example="B">Grade in which the unit was released; null when the model knows no grades.</param>
/// <param name="RegradeNote" example="self-noise 1 dB above the limit of grade A">
/// Why the grade is not the one it was started for; null when it is.
/// </param>
/// <param name="Routes">Route revisions that judged the unit and its parts.</param>
/// <param name="StartedAt" example="2025-12-08T09:10:00+01:00">First recorded work on the unit or on a part in it.</param>
/// <param name="FinishedAt" example="2026-01-31T14:20:00+01:00">When the last stage was passed.</param>
public sealed record UnitIdentity(
    string Serial,
    string Model,
    string Kind,
    string? Grade,
    string? RegradeNote,
    IReadOnlyList<CertifiedRoute> Routes,
    DateTimeOffset StartedAt,
    DateTimeOffset FinishedAt
);

/// <summary>The immutable revision of a route under which a part was built and judged.</summary>
/// <param name="PartKind" example="capsule">Kind of part that the route builds.</param>
/// <param name="Code" example="TARN-2/capsule">Code of the route.</param>
/// <param name="Revision" example="3">Revision in force when the part was started.</param>
public sealed record CertifiedRoute(string PartKind, string Code, int Revision)
{
    /// <summary>The route's own title; null in certificates that were issued before it was told.</summary>
    /// <example>Capsule, dual diaphragm</example>
    public string? Title { get; init; }

    /// <summary>The model that it builds.</summary>
    /// <example>TARN-2</example>
    public string? Model { get; init; }
}
