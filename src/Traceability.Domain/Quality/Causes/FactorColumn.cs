using System.Globalization;

namespace Traceability.Domain.Quality.Causes;

/// <summary>One factor over all rows: the level of each part as a small number, so that a million parts can be counted quickly.</summary>
public sealed class FactorColumn
{
    /// <summary>The code of a part whose level is not known.</summary>
    public const int Unknown = -1;

    private readonly string[] levels;
    private readonly int[] codes;

    /// <summary>Wraps codes that are made already.</summary>
    /// <param name="name">The factor.</param>
    /// <param name="levels">The level behind each code.</param>
    /// <param name="codes">One code per row, or <see cref="Unknown"/>. The array is taken over, not copied.</param>
    /// <exception cref="ArgumentException">A code points to no level.</exception>
    public FactorColumn(string name, IReadOnlyList<string> levels, int[] codes)
    {
        if (codes.Any(code => code < Unknown || code >= levels.Count))
        {
            throw new ArgumentException("A code points to no level.", nameof(codes));
        }

        (Name, this.levels, this.codes) = (name, [.. levels], codes);
    }

    /// <summary>The factor.</summary>
    public string Name { get; }

    /// <summary>The level behind each code.</summary>
    public IReadOnlyList<string> Levels => levels;

    /// <summary>One code per row.</summary>
    public ReadOnlySpan<int> Codes => codes;

    /// <summary>Codes a column of texts; null is unknown.</summary>
    /// <param name="name">The factor.</param>
    /// <param name="values">One level per row.</param>
    public static FactorColumn Of(string name, IReadOnlyList<string?> values)
    {
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        var codes = new int[values.Count];
        for (int i = 0; i < codes.Length; i++)
        {
            codes[i] = Unknown;
            if (values[i] is { } level && !known.TryGetValue(level, out codes[i]))
            {
                known.Add(level, codes[i] = known.Count);
            }
        }

        return new FactorColumn(name, [.. known.Keys], codes);
    }

    /// <summary>
    /// Cuts a measured circumstance (ambient temperature, humidity, film thickness) into bands that hold about equally many parts, so that
    /// it can be ranked beside lots and jigs. Equal values stay in one band; null, NaN and infinity are unknown.
    /// </summary>
    /// <param name="name">The factor.</param>
    /// <param name="values">One value per row.</param>
    /// <param name="bands">How many bands, 2 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bands"/> is below 2.</exception>
    public static FactorColumn Banded(string name, IReadOnlyList<double?> values, int bands = 4)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bands, 2);
        double[] sorted = [.. values.Where(v => v is { } x && double.IsFinite(x)).Select(v => v!.Value).Order()];
        double[] starts =
            sorted.Length == 0
                ? []
                : [.. Enumerable.Range(0, bands).Select(b => sorted[(int)((long)sorted.Length * b / bands)]).Distinct()];
        string[] levels =
        [
            .. starts.Select(
                (start, b) =>
                    b + 1 < starts.Length
                        ? string.Create(CultureInfo.InvariantCulture, $"{start} to below {starts[b + 1]}")
                        : string.Create(CultureInfo.InvariantCulture, $"{start} to {sorted[^1]}")
            ),
        ];
        return new FactorColumn(name, levels, [.. values.Select(Band)]);

        int Band(double? value)
        {
            if (value is not { } x || !double.IsFinite(x))
            {
                return Unknown;
            }

            int found = Array.BinarySearch(starts, x);
            return found >= 0 ? found : ~found - 1;
        }
    }
}
