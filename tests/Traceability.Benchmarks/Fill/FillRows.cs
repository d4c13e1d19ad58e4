namespace Traceability.Benchmarks;

/// <summary>Rows that wait to be copied, by their type.</summary>
internal sealed class FillRows
{
    private readonly Dictionary<Type, List<object>> byType = [];

    public IEnumerable<(Type Type, List<object> Rows)> All => byType.Select(b => (b.Key, b.Value));

    public int Count => byType.Values.Sum(rows => rows.Count);

    public void Add(object row)
    {
        if (!byType.TryGetValue(row.GetType(), out var rows))
        {
            byType.Add(row.GetType(), rows = []);
        }

        rows.Add(row);
    }

    public void AddRange(IEnumerable<object> rows)
    {
        foreach (var row in rows)
        {
            Add(row);
        }
    }
}
