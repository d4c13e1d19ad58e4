using Traceability.Domain.Records;

namespace Traceability.Domain.Gates;

/// <summary>Which calibrations of an instrument count: those that no correction took the place of.</summary>
public static class StandingCalibrations
{
    /// <summary>
    /// What counts of everything that was entered. A correction that leaves day and verdict as they were (a wrong certificate number, a
    /// wrong due date) is known since the first entry, so that nobody's decision becomes one taken without knowing, and calibrations of
    /// one day keep their order; one that changes day or verdict is known from when it was entered.
    /// Check: <c>StandingCalibrationsTests</c>.
    /// </summary>
    public static IReadOnlyList<Calibration> Of(IReadOnlyCollection<Calibration> entered)
    {
        var byId = entered.ToDictionary(c => c.Id);
        var replaced = entered.Select(c => c.Replaces).OfType<Guid>().ToHashSet();
        return [.. entered.Where(c => !replaced.Contains(c.Id)).Select(c => c with { RecordedAt = KnownSince(c, byId) })];
    }

    private static DateTimeOffset KnownSince(Calibration now, Dictionary<Guid, Calibration> byId)
    {
        var first = now;
        while (
            first.Replaces is { } before
            && byId.TryGetValue(before, out var earlier)
            && earlier.Passed == now.Passed
            && earlier.CalibratedOn == now.CalibratedOn
        )
        {
            first = earlier;
        }

        return first.RecordedAt;
    }
}
