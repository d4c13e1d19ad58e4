using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>A decision that held what a trace found, with what lifting it would touch.</summary>
/// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">Names the decision: the id of its first hold.</param>
/// <param name="Reason" example="pinholes (trace of lot F-2603)">Why it was held, with the trace that found it.</param>
/// <param name="HeldAt" example="2026-11-12T07:50:00Z">Since when.</param>
/// <param name="HeldBy">Who decided it.</param>
/// <param name="Parts">The parts that it still holds.</param>
/// <param name="Lots">Numbers of the lots that it still holds.</param>
/// <param name="Instrument" example="CAP-02">The instrument that it still holds; null when there is none.</param>
/// <param name="StayHeld" example="1">Parts that other holds would still stop.</param>
/// <param name="LiftedBefore" example="0">Holds of it that were lifted one by one since.</param>
/// <param name="Open" example="true">True while it holds something.</param>
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
