namespace Traceability.Domain.Quality.ManyTests;

/// <summary>The bluntest correction for many questions: min(1, m p).</summary>
/// <remarks>
/// Valid for p from 0 to 1 and for none at all. Never smaller than <see cref="Holm"/>; here for comparison. Checked by F10-002.
/// </remarks>
public static class Bonferroni
{
    /// <summary>The adjusted p of each question, in the order given.</summary>
    /// <param name="pValues">The raw p-values.</param>
    /// <exception cref="ArgumentException">A p-value does not lie from 0 to 1.</exception>
    public static IReadOnlyList<double> Adjust(IReadOnlyList<double> pValues)
    {
        PValues.Require(pValues);
        return [.. pValues.Select(p => Math.Min(1, p * pValues.Count))];
    }
}
