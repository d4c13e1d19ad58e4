using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Charts;

/// <summary>A chart thinned to what a screen can show.</summary>
/// <param name="Kept">The positions (from 0) of the points kept, rising.</param>
/// <param name="Total">How many points there are.</param>
public sealed record ThinnedPoints(IReadOnlyList<int> Kept, int Total)
{
    /// <summary>True when points were left out, which the chart must say.</summary>
    public bool IsThinned => Kept.Count < Total;

    /// <summary>The sentence under the chart, or null when every point is drawn.</summary>
    public string? Note =>
        IsThinned
            ? string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"{Kept.Count} of {Total} points are drawn: of each stretch the first, the lowest, the highest and the last, and every"
                    + $" marked point."
            )
            : null;
}

/// <summary>
/// Thins a long series honestly: the points are cut into stretches of equal length and of each stretch the first, lowest, highest and last
/// point stay, so that no peak disappears and nothing is averaged.
/// </summary>
/// <remarks>
/// Marked points (rule breaks, failed parts) always stay. A series no longer than the target is kept whole. Values must be finite.
/// Common practice, no source. Checked by <c>ThinningProperties</c>.
/// </remarks>
public static class ChartThinning
{
    /// <summary>The positions to draw.</summary>
    /// <param name="values">The values in drawing order.</param>
    /// <param name="target">About how many points the screen can show, 4 or more; marked points come on top.</param>
    /// <param name="marked">Positions that must stay.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="target"/> is below 4.</exception>
    public static ThinnedPoints Of(IReadOnlyList<double> values, int target, IReadOnlyCollection<int>? marked = null)
    {
        Sample.RequireFinite(values);
        ArgumentOutOfRangeException.ThrowIfLessThan(target, 4);
        int n = values.Count;
        if (n <= target)
        {
            return new ThinnedPoints([.. Enumerable.Range(0, n)], n);
        }

        int stretches = target / 4;
        var kept = new SortedSet<int>(marked ?? []);
        for (int stretch = 0; stretch < stretches; stretch++)
        {
            int start = (int)((long)n * stretch / stretches),
                end = (int)((long)n * (stretch + 1) / stretches);
            int lowest = start,
                highest = start;
            for (int i = start + 1; i < end; i++)
            {
                lowest = values[i] < values[lowest] ? i : lowest;
                highest = values[i] > values[highest] ? i : highest;
            }

            kept.UnionWith([start, lowest, highest, end - 1]);
        }

        return new ThinnedPoints([.. kept], n);
    }
}
