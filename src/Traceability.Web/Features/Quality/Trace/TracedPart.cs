using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Tracing;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>A part that a trace found. What came back keeps its day and customer.</summary>
/// <param name="Serial" example="CS-0051">The part's serial.</param>
/// <param name="Kind" example="capsule">What kind of part it is.</param>
/// <param name="Model" example="TARN-1">Its model.</param>
/// <param name="Present" example="true">True while what is in doubt is in it.</param>
/// <param name="Direct" example="false">
/// True when it was itself touched (measured, worked on, in the carrier) and not only something in it.
/// </param>
/// <param name="Times" example="2">How often.</param>
/// <param name="Since" example="2026-09-28T08:30:00Z">Since when.</param>
/// <param name="Until" example="2026-10-20T10:00:00Z">Until when; null while it is present.</param>
/// <param name="State" example="fitted">What it is.</param>
/// <param name="Where" example="shipped">in-work, stock, shipped, returned or scrapped, said of the outermost part around it.</param>
/// <param name="Stage" example="insulation">The stage at which that is, or for which it waits; null when it is not in work.</param>
/// <param name="FittedIn" example="US-0034">The outermost part around it; null when it lies alone.</param>
/// <param name="ShippedAt" example="2026-11-25T15:00:00Z">When it left; null when it did not.</param>
/// <param name="CustomerReference" example="order 17">To whom it went.</param>
/// <param name="Standing">What it is, with the reasons.</param>
public sealed record TracedPart(
    string Serial,
    string Kind,
    string Model,
    bool Present,
    bool Direct,
    int Times,
    DateTimeOffset Since,
    DateTimeOffset? Until,
    [property: OneOf(typeof(PartState))] string State,
    [property: OneOf(typeof(Whereabouts))] string Where,
    string? Stage,
    string? FittedIn,
    DateTimeOffset? ShippedAt,
    string? CustomerReference,
    StandingAnswer Standing
)
{
    /// <summary>True when holding everything that was found holds this too.</summary>
    /// <example>true</example>
    public bool IsHeldWithAll => Present && State != "scrapped";
}
