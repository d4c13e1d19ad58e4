namespace Traceability.Domain.Quality.ManyTests;

/// <summary>Guards and orders p-values.</summary>
internal static class PValues
{
    /// <exception cref="ArgumentException">A p-value does not lie from 0 to 1.</exception>
    public static void Require(IReadOnlyList<double> pValues)
    {
        if (pValues.Any(p => p is not (>= 0 and <= 1)))
        {
            throw new ArgumentException("A p-value lies between 0 and 1.", nameof(pValues));
        }
    }

    /// <summary>The positions of the p-values from the smallest to the largest.</summary>
    public static int[] SmallestFirst(IReadOnlyList<double> pValues)
    {
        Require(pValues);
        int[] order = [.. Enumerable.Range(0, pValues.Count)];
        Array.Sort(order, (i, j) => pValues[i].CompareTo(pValues[j]));
        return order;
    }
}
