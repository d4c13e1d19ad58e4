using Traceability.Domain.Records;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Quality.Holds;

/// <summary>A hold on a lot, a part or an instrument.</summary>
/// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The hold's id.</param>
/// <param name="Lot" example="F-2603">The lot held; null when it is on something else.</param>
/// <param name="Part" example="DS-0107">The part held; null when it is on something else.</param>
/// <param name="Instrument" example="CAP-02">The instrument held; null when it is on something else.</param>
/// <param name="Reason" example="pinholes in the film">Why it is held.</param>
/// <param name="HeldAt" example="2026-11-12T07:50:00Z">Since when.</param>
/// <param name="HeldBy">Who put it.</param>
/// <param name="Open" example="true">True while it stops something.</param>
/// <param name="ReleaseReason" example="seen under the lens: none">Why it was released; null while it is open.</param>
/// <param name="ReleasedAt" example="2026-11-14T09:00:00Z">When it was released; null while it is open.</param>
/// <param name="ReleasedBy">Who released it; null while it is open.</param>
public sealed record HoldAnswer(
    Guid Id,
    string? Lot,
    string? Part,
    string? Instrument,
    string Reason,
    DateTimeOffset HeldAt,
    Who HeldBy,
    bool Open,
    string? ReleaseReason,
    DateTimeOffset? ReleasedAt,
    Who? ReleasedBy
)
{
    public static HoldAnswer Of(Hold hold, HeldSubject subject, HoldRelease? release, Func<Guid, Who> who) =>
        new(
            hold.Id,
            hold.LotId is null ? null : subject.Code,
            hold.PartId is null ? null : subject.Code,
            hold.InstrumentId is null ? null : subject.Code,
            hold.Reason,
            hold.OccurredAt,
            who(hold.By),
            release is null,
            release?.Reason,
            release?.OccurredAt,
            release is null ? null : who(release.By)
        );
}

/// <summary>A lot, part or instrument that can be held.</summary>
public sealed record HeldSubject(Guid Id, string Code);
