using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Standings;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>What a part is now, with everything in and around it.</summary>
/// <param name="Code" example="waiting">The word for it.</param>
/// <param name="Until" example="2026-11-26T08:05:00Z">When a wait is over.</param>
/// <param name="Because" example="the adhesive cures">What keeps it there.</param>
/// <param name="Where" example="US26-00034">
/// What it is fitted in; of what left the workshop the reference of who has it; else its stage.
/// </param>
public sealed record StandingAnswer(
    [property: OneOf(typeof(StandingCode))] string Code,
    DateTimeOffset? Until,
    string? Because,
    string? Where
)
{
    public static StandingAnswer Of(Standing s) => new(Words.Of(s.Code), s.Until, s.Because, s.Where);
}
