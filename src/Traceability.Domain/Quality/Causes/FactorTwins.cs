namespace Traceability.Domain.Quality.Causes;

/// <summary>
/// Factors that say the same of every part are one question and not several: the builder of one stage is often the builder of the next.
/// Asked once, they cost one comparison in the adjustment for many; their names stay visible together.
/// </summary>
public static class FactorTwins
{
    /// <summary>What stands between the names of factors that were joined.</summary>
    public const string Between = " = ";

    /// <summary>
    /// The factors with twins joined, in order of first appearance. Twins have the same levels for the same rows; a factor that knows fewer
    /// rows is no twin. Valid for any number of factors of one table. Checked by <c>FactorTwinTests</c>.
    /// </summary>
    /// <param name="factors">The factors of one table.</param>
    /// <param name="namesShown">How many names of twins are kept; the others are counted. 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="namesShown"/> is below 1.</exception>
    public static IReadOnlyList<FactorColumn> Joined(IReadOnlyList<FactorColumn> factors, int namesShown = 3)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(namesShown, 1);
        var groups = new List<List<FactorColumn>>();
        var byHash = new Dictionary<int, List<List<FactorColumn>>>();
        foreach (FactorColumn factor in factors)
        {
            int hash = HashOf(factor);
            if (!byHash.TryGetValue(hash, out List<List<FactorColumn>>? alike))
            {
                byHash.Add(hash, alike = []);
            }

            if (alike.Find(g => AreAlike(g[0], factor)) is { } group)
            {
                group.Add(factor);
                continue;
            }

            List<FactorColumn> alone = [factor];
            alike.Add(alone);
            groups.Add(alone);
        }

        return [.. groups.Select(g => g.Count == 1 ? g[0] : new FactorColumn(NameOf(g, namesShown), g[0].Levels, g[0].Codes.ToArray()))];
    }

    private static string NameOf(List<FactorColumn> group, int shown)
    {
        string names = string.Join(Between, group.Take(shown).Select(f => f.Name));
        return group.Count > shown ? FormattableString.Invariant($"{names}{Between}{group.Count - shown} more") : names;
    }

    private static int HashOf(FactorColumn factor)
    {
        var hash = new HashCode();
        foreach (int code in factor.Codes)
        {
            hash.Add(code < 0 ? 0 : string.GetHashCode(factor.Levels[code], StringComparison.Ordinal));
        }

        return hash.ToHashCode();
    }

    private static bool AreAlike(FactorColumn one, FactorColumn other)
    {
        for (int row = 0; row < one.Codes.Length; row++)
        {
            int here = one.Codes[row],
                there = other.Codes[row];
            if (here < 0 || there < 0 ? here != there : one.Levels[here] != other.Levels[there])
            {
                return false;
            }
        }

        return true;
    }
}
