using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>
/// What lifting a decision would touch: the parts, lots and instrument that it still holds. <c>LiftedBefore</c> counts what was lifted one
/// by one since.
/// </summary>
public sealed record TracedHold(
    Guid Id,
    string Reason,
    DateTimeOffset HeldAt,
    Who HeldBy,
    IReadOnlyList<HeldPart> Parts,
    IReadOnlyList<string> Lots,
    string? Instrument,
    int StayHeld,
    int LiftedBefore,
    bool Open
);
