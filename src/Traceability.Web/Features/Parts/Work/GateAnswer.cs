using Traceability.Domain.Gates;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>The gate of one stage.</summary>
/// <param name="Stage" example="insulation">The stage's code.</param>
/// <param name="Title" example="Insulation test">The stage's title.</param>
/// <param name="State" example="waiting">Where the stage stands for the part.</param>
/// <param name="OpensAt" example="2026-11-25T14:20:00Z">From when it may start, when only time keeps it closed.</param>
/// <param name="ClosesAt" example="2026-11-25T16:20:00Z">Until when it must have started.</param>
/// <param name="Checks">Every rule that applies to it, met or not.</param>
public sealed record GateAnswer(
    string Stage,
    string Title,
    [property: OneOf(typeof(StageState))] string State,
    DateTimeOffset? OpensAt,
    DateTimeOffset? ClosesAt,
    IReadOnlyList<GateCheck> Checks
)
{
    public static GateAnswer Of(GateVerdict v) => new(v.Stage, v.Title, Words.Of(v.State), v.OpensAt, v.ClosesAt, v.Checks);
}
