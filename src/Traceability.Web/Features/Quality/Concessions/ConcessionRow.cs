using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Queries;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Concessions;

/// <summary>A concession for parts to come, with what is left of it.</summary>
/// <param name="Number" example="CON-0003">Its number.</param>
/// <param name="State" example="open">open, used-up or expired.</param>
/// <param name="Lot" example="F-2603">Only parts that contain this lot; null for any.</param>
/// <param name="Code" example="stage-failed">Only nonconformities with this code; null for any.</param>
/// <param name="Stage" example="ring-resonance">Only failures of this stage, by its code; null for any.</param>
/// <param name="MostParts" example="5">At most so many parts; null when only the day limits it.</param>
/// <param name="ValidUntil" example="2026-12-31">Last day on which it may be used; null when only the number limits it.</param>
/// <param name="Used" example="2">Parts on which it was used.</param>
/// <param name="Left" example="3">Parts on which it may still be used; null without such a limit.</param>
/// <param name="Reason" example="resonance 4 Hz low, no effect on the capsule">Why it was given.</param>
/// <param name="GivenAt" example="2026-11-02T10:00:00Z">When it was given.</param>
/// <param name="GivenBy">Who gave it.</param>
public sealed record ConcessionRow(
    string Number,
    [property: OneOf("ConcessionState", "open", "used-up", "expired")] string State,
    string? Lot,
    string? Code,
    string? Stage,
    int? MostParts,
    DateOnly? ValidUntil,
    int Used,
    int? Left,
    string Reason,
    DateTimeOffset GivenAt,
    Who GivenBy
)
{
    /// <summary>How a concession stands on a day.</summary>
    public static ConcessionRow Of(PermitStanding p, DateOnly day, Who by) =>
        new(
            p.Permit.Number,
            p.StateOn(day),
            p.LotNumber,
            p.Permit.Code,
            p.Permit.Stage,
            p.Permit.MostParts,
            p.Permit.ValidUntil,
            p.UsedOn.Count,
            p.Left,
            p.Permit.Reason,
            p.Permit.OccurredAt,
            by
        );
}
