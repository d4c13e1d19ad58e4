namespace Traceability.Domain.Scanning;

/// <summary>A reason is said in words, or scanned from the action sheet; a code that came into the box by mistake is none.</summary>
/// <remarks>
/// A word is two letters or more and nothing else, marks around it and hyphens inside it aside. Two words are a reason, or one of
/// three letters that is not all capitals: so are codes written. Checked by <c>StationWalkTests</c>.
/// </remarks>
internal static class ReasonWords
{
    private const int ShortestAlone = 3,
        ShortestAmongOthers = 2;

    private static readonly char[] Marks = ['.', ',', ';', ':', '!', '?', '(', ')', '"', '\''];

    /// <summary>The reason that was given, or <see langword="null"/>.</summary>
    public static string? Of(Scan scan) =>
        scan switch
        {
            Scan.Action { What: StationAction.Mistyped } => PromptTexts.MistypedAtTheStation,
            Scan.Bare { Text: var text } when AreWords(text) => text,
            _ => null,
        };

    private static bool AreWords(string text)
    {
        List<string> words = [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Trim(Marks)).Where(IsWord)];
        return words.Count > 1 || (words is [{ Length: >= ShortestAlone } only] && only.Any(c => char.IsLetter(c) && !char.IsUpper(c)));
    }

    private static bool IsWord(string word) =>
        word.Length >= ShortestAmongOthers && word.All(c => char.IsLetter(c) || c is '-' or '\'' or '\u2019');
}
