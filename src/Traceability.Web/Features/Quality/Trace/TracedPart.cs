using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Tracing;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>
/// A part that a trace found. <c>Direct</c>: it was itself touched (measured, worked on, in the carrier) and not only something in it.
/// <c>Present</c>: what is in doubt is (still) in it. <c>Where</c> is <c>in-work</c>, <c>stock</c>, <c>shipped</c>, <c>returned</c> or
/// <c>scrapped</c>, and is said of the outermost part around it, which <c>FittedIn</c> names; <c>Stage</c> is the stage at which that is,
/// or for which it waits. What came back keeps its day and customer.
/// </summary>
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
    public bool IsHeldWithAll => Present && State != "scrapped";
}
