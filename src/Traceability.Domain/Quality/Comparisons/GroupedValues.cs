namespace Traceability.Domain.Quality.Comparisons;

/// <summary>Guards the groups of a comparison of several groups.</summary>
internal static class GroupedValues
{
    /// <summary>The groups that hold at least <paramref name="least"/> values: an empty lot is not a lot that differs.</summary>
    public static IReadOnlyList<IReadOnlyList<double>> WithAtLeast(int least, IReadOnlyList<IReadOnlyList<double>> groups) =>
        [.. groups.Where(g => g.Count >= least)];
}
