namespace Traceability.Domain.Codes;

/// <summary>Which known kind somebody may have meant who wrote one that is not known.</summary>
public static class KindLikeness
{
    /// <summary>
    /// The known code that is one character wrong, missing or too many away, has two neighbours swapped, or is written otherwise; null when
    /// none is. Short codes are as near to each other by chance, so that they must be the same but for how they are written.
    /// </summary>
    public static string? Nearest(string code, IEnumerable<string> known) =>
        known
            .Select(k => (Code: k, Apart: CodeLikeness.Apart(code, k)))
            .Where(k => k.Apart == 0 || (k.Apart == 1 && code.Length >= CodeLikeness.ShortestWithMistake))
            .OrderBy(k => k.Apart)
            .ThenBy(k => k.Code, StringComparer.Ordinal)
            .Select(k => k.Code)
            .FirstOrDefault();
}
