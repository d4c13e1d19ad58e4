using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Tests.Gates.Vocabulary;

/// <summary>Things that are fitted and measured with: in order, unless the test says otherwise.</summary>
internal static class Something
{
    private static readonly DateTimeOffset LongAgo = new(2025, 12, 1, 0, 0, 0, TimeSpan.Zero);
    private static int made;

    public static LotInput Lot(
        string position,
        string kind,
        DateTimeOffset? expiresAt = null,
        DateTimeOffset? mixedAt = null,
        int? potLifeMinutes = null
    ) =>
        new(
            position,
            new(
                NextId(),
                "L-7",
                kind,
                "a supplier",
                "S-1",
                100,
                "count",
                LongAgo,
                expiresAt,
                mixedAt,
                potLifeMinutes,
                null,
                null,
                null,
                Guid.Empty,
                LongAgo,
                LongAgo
            ),
            LotState.Released,
            [],
            1
        );

    public static PartInput Part(
        string position,
        string kind = ARoute.ChildKind,
        string serial = "D-1",
        params (string Name, decimal Value)[] values
    ) =>
        new(
            position,
            NextId(),
            serial,
            kind,
            ARoute.Model,
            PartState.Finished,
            true,
            null,
            [],
            values.ToDictionary(v => v.Name, v => v.Value)
        );

    public static InstrumentStanding Instrument(string kind, DateOnly calibratedOn, DateOnly dueOn, bool hasReference = false) =>
        new(
            new(
                NextId(),
                $"{kind}-1",
                kind,
                kind,
                hasReference ? 100m : null,
                hasReference ? 1m : null,
                null,
                Guid.Empty,
                LongAgo,
                LongAgo
            ),
            [new(NextId(), Guid.Empty, calibratedOn, dueOn, "reference", true, null, Guid.Empty, LongAgo, LongAgo)],
            [],
            []
        );

    public static InstrumentStanding Checked(this InstrumentStanding standing, DateTimeOffset at, bool passed = true) =>
        standing with
        {
            Checks = [.. standing.Checks, new(NextId(), standing.Instrument.Id, 100m, 100m, passed, null, Guid.Empty, at, at)],
        };

    private static Guid NextId() => new(Interlocked.Increment(ref made), 5, 5, 0, 0, 0, 0, 0, 0, 0, 0);
}
