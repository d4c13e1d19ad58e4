using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>A part that a decision holds. <c>StaysHeld</c>: another hold on it stays when this decision is lifted.</summary>
public sealed record HeldPart(string Serial, string Kind, string Model, string State, bool StaysHeld, StandingAnswer Standing);
