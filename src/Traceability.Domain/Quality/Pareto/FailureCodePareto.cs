namespace Traceability.Domain.Quality.Pareto;

/// <summary>One bar: a failure code and its share.</summary>
/// <param name="Code" example="stage-failed">The code.</param>
/// <param name="Count" example="21">How often.</param>
/// <param name="Share" example="0.328">Count by all counts, 0 to 1.</param>
/// <param name="Cumulative" example="0.328">The share of this and all more frequent codes, 0 to 1; exactly 1 at the last.</param>
public readonly record struct ParetoBar(string Code, int Count, double Share, double Cumulative);

/// <summary>
/// Failure codes from the most frequent to the least, with cumulative shares.
/// </summary>
/// <remarks>
/// Codes that never occurred are left out; equal counts stand in order of code, so that a chart does not change by itself. No failures: an
/// empty chart. Source: J. M. Juran, Quality Control Handbook (from memory). Checked by <c>FailureCodeParetoTests</c>.
/// </remarks>
/// <param name="Bars">The bars, most frequent first.</param>
/// <param name="Total">All failures.</param>
public sealed record FailureCodePareto(IReadOnlyList<ParetoBar> Bars, int Total)
{
    /// <summary>The fewest codes that together make up at least a share of all failures.</summary>
    /// <param name="share">0 to 1, 0.8 as a rule.</param>
    public IReadOnlyList<ParetoBar> VitalFew(double share = 0.8)
    {
        int first = Bars.TakeWhile(bar => bar.Cumulative < share).Count();
        return [.. Bars.Take(first + 1)];
    }

    /// <summary>Sorts and sums counts; several counts of one code are added.</summary>
    /// <param name="counts">Code and count, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative.</exception>
    public static FailureCodePareto Of(IEnumerable<KeyValuePair<string, int>> counts)
    {
        var summed = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach ((string code, int count) in counts)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(count);
            summed[code] = summed.GetValueOrDefault(code) + count;
        }

        int total = summed.Values.Sum(),
            running = 0;
        return new FailureCodePareto(
            [
                .. summed
                    .Where(c => c.Value > 0)
                    .OrderByDescending(c => c.Value)
                    .Select(c => new ParetoBar(c.Key, c.Value, (double)c.Value / total, (double)(running += c.Value) / total)),
            ],
            total
        );
    }
}
