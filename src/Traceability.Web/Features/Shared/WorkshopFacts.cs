using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Web.Features.Shared;

/// <summary>What holds of the workshop at a moment: its latest revision, what was set over it at the start, the demonstration.</summary>
/// <param name="Revision">The revision in force; null when nobody has filled in the workshop's page yet.</param>
/// <param name="Set">What was set as environment variables; it goes before the revision.</param>
/// <param name="Demo">True when the store holds the invented demonstration, which keeps its own name.</param>
public sealed record WorkshopFacts(WorkshopRevision? Revision, WorkshopOverrides Set, bool Demo)
{
    private const string Program = "Traceability";

    /// <summary>The workshop's own name; null when nobody has said it.</summary>
    public string? Workshop => Demo ? Revision?.Name ?? Set.Name : Set.Name ?? Revision?.Name;

    /// <summary>
    /// What stands at the head of a page: the workshop's name, else the program's. No document speaks in the program's name.
    /// </summary>
    public string Name => Workshop ?? Program;

    /// <summary>Its time zone by its IANA name.</summary>
    public string TimeZone => Set.TimeZone ?? Revision?.TimeZone ?? "UTC";

    /// <summary>Its calendar.</summary>
    public WorkshopCalendar Calendar => new(TimeZoneInfo.FindSystemTimeZoneById(TimeZone));

    /// <summary>The address by which its service is reached from outside; null when nobody has said it.</summary>
    public string? PublicUrl => Set.PublicUrl ?? Revision?.PublicUrl;

    /// <summary>The language that it works in.</summary>
    public string Language => Set.Language ?? Revision?.Language ?? "en";
}
