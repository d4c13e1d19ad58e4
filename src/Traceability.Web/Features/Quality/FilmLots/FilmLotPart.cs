using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>One diaphragm of a film lot. Day and customer are those of the unit that it is in or was in last.</summary>
/// <param name="Serial" example="DS-0107">The diaphragm's serial.</param>
/// <param name="Model" example="TARN-1">Its model.</param>
/// <param name="FilmFittedAt" example="2026-09-28T08:30:00Z">When the film was fitted.</param>
/// <param name="Builder" example="B2">Badge of who fitted it; null when nobody is known.</param>
/// <param name="Fate" example="failed">failed, in-work, passed-first or passed-after-rework.</param>
/// <param name="FailedPlace" example="diaphragm">Where it first failed; null when it did not.</param>
/// <param name="FailedStage" example="ring-resonance">The stage of that failure.</param>
/// <param name="FailedPart" example="DS-0107">The part that failed: itself or what it is in.</param>
/// <param name="FailedAt" example="2026-10-02T09:14:00Z">When that was.</param>
/// <param name="Capsule" example="CS-0051">The capsule that it is or was last in.</param>
/// <param name="OutOfCapsuleAt" example="2026-10-20T10:00:00Z">When it was taken out; null while it is in it.</param>
/// <param name="Unit" example="US-0034">The unit that it is or was last in.</param>
/// <param name="OutOfUnitAt" example="2026-11-02T10:00:00Z">When it left the unit; null while it is in it.</param>
/// <param name="UnitState" example="shipped">What the unit is now.</param>
/// <param name="ShippedAt" example="2026-11-25T15:00:00Z">When the unit left.</param>
/// <param name="CustomerReference" example="order 17">To whom it went.</param>
/// <param name="Standing">What the diaphragm itself is now.</param>
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
