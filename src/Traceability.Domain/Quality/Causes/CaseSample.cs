using System.Buffers.Binary;

namespace Traceability.Domain.Quality.Causes;

/// <summary>
/// Which parts of a large question have their circumstances looked up. Every part takes dozens of look-ups; a few thousand parts answer the
/// question as well as all of them, when they are chosen without regard to the circumstances.
/// </summary>
/// <remarks>
/// Failed parts first, up to half of the places, then passed ones (a case-control sample): odds ratios are those of all parts, whatever the
/// share of failed parts taken, because the odds of a circumstance among the failed and among the passed are both estimated without bias,
/// and Fisher's test is conditional on both numbers (J. Cornfield, J. Natl. Cancer Inst. 11 (1951) 1269; N. E. Breslow and N. E. Day,
/// Statistical Methods in Cancer Research I, IARC 1980, section 4.3; both from memory). Shares of failed parts and means of values in such
/// a sample are not those of all. Where values are asked about, parts are therefore taken without regard to whether they failed. Chosen by
/// a hash of the id: the same question gets the same parts.
/// </remarks>
public static class CaseSample
{
    /// <summary>The rows to be looked at, in their order; all of them when they are not more than <paramref name="most"/>.</summary>
    /// <param name="parts">The id of each part and whether it failed.</param>
    /// <param name="most">The most rows, 2 or more.</param>
    /// <param name="byOutcome">False to take no regard to failures.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="most"/> is below 2.</exception>
    public static IReadOnlyList<int> Rows(IReadOnlyList<(Guid Id, bool Failed)> parts, int most, bool byOutcome)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 2);
        if (parts.Count <= most)
        {
            return [.. Enumerable.Range(0, parts.Count)];
        }

        var drawn = Enumerable.Range(0, parts.Count).OrderBy(i => Hash(parts[i].Id)).ThenBy(i => i);
        if (!byOutcome)
        {
            return [.. drawn.Take(most).Order()];
        }

        var outcomes = drawn.ToLookup(i => parts[i].Failed);
        int failed = outcomes[true].Count(),
            passed = parts.Count - failed;
        int failedTaken = Math.Min(failed, Math.Max(most / 2, most - passed));
        return [.. outcomes[true].Take(failedTaken).Concat(outcomes[false].Take(most - failedTaken)).Order()];
    }

    /// <summary>
    /// Ids begin with a time: both halves are mixed (the finaliser of SplitMix64, public domain), so that no day is preferred.
    /// </summary>
    private static ulong Hash(Guid id)
    {
        Span<byte> bytes = stackalloc byte[16];
        id.TryWriteBytes(bytes);
        ulong z =
            BinaryPrimitives.ReadUInt64LittleEndian(bytes) ^ (BinaryPrimitives.ReadUInt64LittleEndian(bytes[8..]) * 0x9E3779B97F4A7C15UL);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
