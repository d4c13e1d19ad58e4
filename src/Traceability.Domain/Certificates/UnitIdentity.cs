namespace Traceability.Domain.Certificates;

/// <summary>What the unit is and how long it was in the making.</summary>
/// <param name="Serial">Serial as engraved on the plate.</param>
/// <param name="Model">Model, as the workshop calls it.</param>
/// <param name="Kind">Kind of part in words, such as "microphone, dual diaphragm".</param>
/// <param name="Grade">Grade in which the unit was released; null when the model knows no grades.</param>
/// <param name="RegradeNote">Why the grade is not the one it was started for; null when it is.</param>
/// <param name="Routes">Route revisions that judged the unit and its parts.</param>
/// <param name="StartedAt">First recorded work on the unit or on a part in it.</param>
/// <param name="FinishedAt">When the last stage was passed.</param>
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
/// <param name="PartKind">Kind of part that the route builds.</param>
/// <param name="Code">Code of the route.</param>
/// <param name="Revision">Revision in force when the part was started.</param>
public sealed record CertifiedRoute(string PartKind, string Code, int Revision)
{
    /// <summary>The route's own title; null in certificates that were issued before it was told.</summary>
    public string? Title { get; init; }

    /// <summary>The model that it builds.</summary>
    public string? Model { get; init; }
}
