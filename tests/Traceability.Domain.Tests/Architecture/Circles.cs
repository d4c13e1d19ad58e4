namespace Traceability.Domain.Tests.Architecture;

/// <summary>Namespaces that use each other, directly or by way of others.</summary>
internal static class Circles
{
    /// <summary>Every set of two or more namespaces each of which reaches all the others, the largest first.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> In(IEnumerable<(string From, string To)> edges)
    {
        var next = edges.Where(e => e.From != e.To).Distinct().ToLookup(e => e.From, e => e.To);
        var reached = next.SelectMany(e => e.Append(e.Key)).Distinct().ToDictionary(n => n, n => Reached(n, next));
        return
        [
            .. reached
                .Keys.Select(n => reached[n].Where(other => reached[other].Contains(n)).Order(StringComparer.Ordinal).ToList())
                .Where(circle => circle.Count > 1)
                .DistinctBy(circle => string.Join(' ', circle))
                .OrderByDescending(circle => circle.Count),
        ];
    }

    private static HashSet<string> Reached(string from, ILookup<string, string> next)
    {
        var seen = new HashSet<string>();
        var open = new Stack<string>(next[from]);
        while (open.TryPop(out var at))
        {
            if (seen.Add(at))
            {
                foreach (var further in next[at])
                {
                    open.Push(further);
                }
            }
        }

        return seen;
    }
}
