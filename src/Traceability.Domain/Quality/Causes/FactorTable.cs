using System.Runtime.InteropServices;

namespace Traceability.Domain.Quality.Causes;

/// <summary>Parts and their circumstances by columns: what <see cref="CauseRanking"/> and <see cref="ValueCauseRanking"/> count.</summary>
public sealed class FactorTable
{
    private readonly bool[] failed;
    private readonly double?[]? values;

    /// <summary>Puts columns side by side. The arrays are taken over, not copied.</summary>
    /// <param name="failed">One outcome per row.</param>
    /// <param name="factors">The factors, each with one code per row.</param>
    /// <param name="values">One measured value per row, or none at all.</param>
    /// <exception cref="ArgumentException">A column has not one entry per row.</exception>
    public FactorTable(bool[] failed, IReadOnlyList<FactorColumn> factors, double?[]? values = null)
    {
        if (factors.Any(f => f.Codes.Length != failed.Length) || (values is not null && values.Length != failed.Length))
        {
            throw new ArgumentException("All columns must have one entry per row.", nameof(factors));
        }

        (this.failed, Factors, this.values) = (failed, factors, values);
    }

    /// <summary>How many parts.</summary>
    public int Rows => failed.Length;

    /// <summary>The factors.</summary>
    public IReadOnlyList<FactorColumn> Factors { get; }

    /// <summary>One outcome per row.</summary>
    public ReadOnlySpan<bool> Failed => failed;

    /// <summary>One measured value per row, or null where there is none.</summary>
    public ReadOnlySpan<double?> Values => values;

    /// <summary>True when the table holds measured values.</summary>
    public bool HasValues => values is not null;

    /// <summary>Turns rows into columns: handy for some thousand parts; for millions build the columns straight from the query.</summary>
    /// <param name="rows">The parts.</param>
    public static FactorTable FromRows(IEnumerable<FactorRow> rows)
    {
        FactorRow[] all = [.. rows];
        var columns = new Dictionary<string, (Dictionary<string, int> Levels, int[] Codes)>(StringComparer.Ordinal);
        var order = new List<string>();
        for (int i = 0; i < all.Length; i++)
        {
            foreach ((string factor, string level) in all[i].Levels)
            {
                if (!columns.TryGetValue(factor, out var column))
                {
                    column = (new Dictionary<string, int>(StringComparer.Ordinal), new int[all.Length]);
                    Array.Fill(column.Codes, FactorColumn.Unknown);
                    columns.Add(factor, column);
                    order.Add(factor);
                }

                ref int code = ref CollectionsMarshal.GetValueRefOrAddDefault(column.Levels, level, out bool known);
                column.Codes[i] = code = known ? code : column.Levels.Count - 1;
            }
        }

        return new FactorTable(
            [.. all.Select(r => r.Failed)],
            [.. order.Select(name => new FactorColumn(name, [.. columns[name].Levels.Keys], columns[name].Codes))],
            all.Any(r => r.Value is not null) ? [.. all.Select(r => r.Value)] : null
        );
    }

    /// <summary>Failed and total by level, in one pass per factor; parts of unknown level are left out of that factor.</summary>
    public IReadOnlyList<LevelCount> Count() => [.. Factors.SelectMany(Count)];

    private LevelCount[] Count(FactorColumn factor)
    {
        var total = new int[factor.Levels.Count];
        var bad = new int[factor.Levels.Count];
        ReadOnlySpan<int> codes = factor.Codes;
        for (int i = 0; i < codes.Length; i++)
        {
            int code = codes[i];
            if (code >= 0)
            {
                total[code]++;
                bad[code] += failed[i] ? 1 : 0;
            }
        }

        return [.. factor.Levels.Select((level, code) => new LevelCount(factor.Name, level, bad[code], total[code]))];
    }
}
