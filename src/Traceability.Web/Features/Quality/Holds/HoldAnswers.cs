using Traceability.Domain.Records;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Quality.Holds;

/// <summary>A hold in answers: what is held, why, and whether it still is.</summary>
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
