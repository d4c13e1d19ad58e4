using Traceability.Domain.Gates;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>A part that a decision holds.</summary>
/// <param name="Serial" example="CS-0051">The part's serial.</param>
/// <param name="Kind" example="capsule">What kind of part it is.</param>
/// <param name="Model" example="TARN-1">Its model.</param>
/// <param name="State" example="on-hold">What it is now.</param>
/// <param name="StaysHeld" example="false">True when another hold on it stays once this decision is lifted.</param>
/// <param name="Standing">What it is now, with the reasons.</param>
public sealed record HeldPart(
    string Serial,
    string Kind,
    string Model,
    [property: OneOf(typeof(PartState))] string State,
    bool StaysHeld,
    StandingAnswer Standing
);
