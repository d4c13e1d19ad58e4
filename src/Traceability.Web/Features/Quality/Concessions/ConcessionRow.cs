using Traceability.Domain.Work;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Quality.Concessions;

/// <summary>A concession for parts to come, with what is left of it.</summary>
public sealed record ConcessionRow(
    string Number,
    string State,
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
