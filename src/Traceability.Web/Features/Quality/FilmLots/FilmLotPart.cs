using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>
/// One diaphragm of a film lot: its fate, where it first failed, what holds it now or held it last, and what the diaphragm itself is now.
/// Day and customer are those of the unit that it is in or was in last.
/// </summary>
public sealed record FilmLotPart(
    string Serial,
    string Model,
    DateTimeOffset FilmFittedAt,
    string? Builder,
    string Fate,
    string? FailedPlace,
    string? FailedStage,
    string? FailedPart,
    DateTimeOffset? FailedAt,
    string? Capsule,
    DateTimeOffset? OutOfCapsuleAt,
    string? Unit,
    DateTimeOffset? OutOfUnitAt,
    string? UnitState,
    DateTimeOffset? ShippedAt,
    string? CustomerReference,
    StandingAnswer Standing
)
{
    public static FilmLotPart Of(FollowedFilm f, PartNow now) =>
        new(
            f.Serial,
            f.Model,
            f.FilmFittedAt,
            f.Builder,
            f.Fate,
            f.FailedPlace,
            f.FailedStage,
            f.FailedPart,
            f.FailedAt,
            f.Capsule,
            f.OutOfCapsuleAt,
            f.Unit,
            f.OutOfUnitAt,
            f.UnitState,
            f.ShippedAt,
            f.CustomerReference,
            StandingAnswer.Of(now.Standing)
        );
}
