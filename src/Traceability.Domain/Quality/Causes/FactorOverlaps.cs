using Traceability.Domain.Quality.Comparisons;

namespace Traceability.Domain.Quality.Causes;

/// <summary>Counts which parts share levels of different factors.</summary>
/// <param name="table">The parts.</param>
internal sealed class FactorOverlaps(FactorTable table)
{
    private readonly Dictionary<(string Factor, string Level), int> totals = table
        .Count()
        .ToDictionary(c => (c.Factor, c.Level), c => c.Total);

    /// <summary>Levels of other factors held by nearly the same parts, closest first.</summary>
    public IReadOnlyList<LookAlike> LookAlikes(string factor, string level, double leastOverlap)
    {
        int[] members = Members(factor, level);
        var found = new List<LookAlike>();
        foreach (FactorColumn other in table.Factors)
        {
            if (other.Name == factor)
            {
                continue;
            }

            var shared = new int[other.Levels.Count];
            ReadOnlySpan<int> codes = other.Codes;
            foreach (int row in members)
            {
                if (codes[row] >= 0)
                {
                    shared[codes[row]]++;
                }
            }

            for (int code = 0; code < shared.Length; code++)
            {
                int both = shared[code],
                    onlyHere = members.Length - both,
                    onlyThere = totals[(other.Name, other.Levels[code])] - both;
                double phi = EffectSize.Phi(both, onlyHere, onlyThere, table.Rows - both - onlyHere - onlyThere);
                if (phi >= leastOverlap)
                {
                    found.Add(new LookAlike(other.Name, other.Levels[code], phi));
                }
            }
        }

        return [.. found.OrderByDescending(l => l.Overlap)];
    }

    /// <summary>
    /// A level against the others of its factor, once among the parts with the leading level and once among those without.
    /// </summary>
    public FailureTable[] Beside(string factor, string level, string leadingFactor, string leadingLevel)
    {
        (FactorColumn column, int code) = Find(factor, level);
        (FactorColumn leader, int leadingCode) = Find(leadingFactor, leadingLevel);
        ReadOnlySpan<int> codes = column.Codes,
            leading = leader.Codes;
        ReadOnlySpan<bool> failed = table.Failed;
        Span<int> cells = stackalloc int[8];
        for (int row = 0; row < codes.Length; row++)
        {
            if (codes[row] >= 0 && leading[row] >= 0)
            {
                cells[(leading[row] == leadingCode ? 4 : 0) + (codes[row] == code ? 0 : 2) + (failed[row] ? 0 : 1)]++;
            }
        }

        return [new(cells[0], cells[1], cells[2], cells[3]), new(cells[4], cells[5], cells[6], cells[7])];
    }

    private int[] Members(string factor, string level)
    {
        (FactorColumn column, int code) = Find(factor, level);
        var members = new int[totals[(factor, level)]];
        ReadOnlySpan<int> codes = column.Codes;
        for (int row = 0, next = 0; row < codes.Length; row++)
        {
            if (codes[row] == code)
            {
                members[next++] = row;
            }
        }

        return members;
    }

    private (FactorColumn Column, int Code) Find(string factor, string level)
    {
        FactorColumn column = table.Factors.First(f => f.Name == factor);
        return (column, column.Levels.ToList().IndexOf(level));
    }
}
