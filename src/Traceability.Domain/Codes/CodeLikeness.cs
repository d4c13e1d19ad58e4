using System.Text;

namespace Traceability.Domain.Codes;

/// <summary>How near a code that somebody read out or typed comes to one that is kept: for look-ups, never for what is recorded.</summary>
/// <remarks>
/// Case, blanks, hyphens, points, underscores and leading zeros make no difference, nor do letters that look like digits (O and Q like 0, I
/// and L like 1, Z like 2, S like 5, G like 6, B like 8). Common practice, no source. Codes are found by a key that an index keeps
/// (<see cref="Key"/>, in SQL <see cref="KeySql"/>) and that is coarser than what counts as the same; <see cref="Apart"/> then says how far
/// apart they are. Checked by <c>CodeLikenessTests</c>.
/// </remarks>
public static class CodeLikeness
{
    /// <summary>Codes shorter than this are not looked for with a mistake in them: too many would be as near.</summary>
    public const int ShortestWithMistake = 4;

    private const string Alike = "ILZSGBOQ",
        AlikeDigits = "11256800";

    // Every character that a key may hold: what is folded away, and zero, never stands in one.
    private const string OfKeys = "123456789ACDEFHJKMNPRTUVWXY";

    /// <summary>The key of a column that holds a code in capitals, in PostgreSQL; the same as <see cref="Key"/> of its text.</summary>
    public static string KeySql(string column) => $"translate({column}, 'ILZSGBOQ0-._', '112568')";

    /// <summary>The text with letters that look like digits as those, and without zeros and separators.</summary>
    public static string Key(string text) => Folded(text).Replace("0", "", StringComparison.Ordinal);

    /// <summary>
    /// The keys of all codes with one character wrong, missing or too many, or two neighbours swapped; its own among them.
    /// </summary>
    public static IReadOnlyCollection<string> KeysOneMistakeAway(string text) => Mistaken(Key(text), OfKeys);

    /// <summary>
    /// Every text with at most one character of another, of these characters wrong, missing or too many, or two neighbours swapped.
    /// </summary>
    public static IReadOnlyCollection<string> Mistaken(string text, string characters)
    {
        HashSet<string> found = [text];
        for (var i = 0; i <= text.Length; i++)
        {
            found.UnionWith(characters.Select(c => text[..i] + c + text[i..]));
            if (i == text.Length)
                continue;
            found.Add(text[..i] + text[(i + 1)..]);
            found.UnionWith(characters.Select(c => text[..i] + c + text[(i + 1)..]));
            if (i + 1 < text.Length)
                found.Add(text[..i] + text[i + 1] + text[i] + text[(i + 2)..]);
        }

        return found;
    }

    /// <summary>
    /// 0: the same code, written otherwise. 1: one character wrong, missing or too many, or two neighbours swapped. Otherwise more.
    /// </summary>
    public static int Apart(string typed, string code) =>
        Math.Min(Distance(Folded(typed), Folded(code)), Distance(WithoutLeadingZeros(typed), WithoutLeadingZeros(code)));

    private static string Folded(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var c in text)
            if (char.IsAsciiLetterOrDigit(c))
                folded.Append(FoldOne(c));
        return folded.ToString();
    }

    /// <summary>Zeros at the beginning of a number count for nothing; a number begins after anything but a digit.</summary>
    private static string WithoutLeadingZeros(string text)
    {
        var kept = new StringBuilder(text.Length);
        var inNumber = false;
        foreach (var c in text)
        {
            var folded = char.IsAsciiLetterOrDigit(c) ? FoldOne(c) : ' ';
            if (folded != ' ' && (folded != '0' || inNumber))
                kept.Append(folded);
            inNumber = char.IsAsciiDigit(c) && (inNumber || folded != '0');
        }

        return kept.ToString();
    }

    private static char FoldOne(char c)
    {
        var capital = char.ToUpperInvariant(c);
        var place = Alike.IndexOf(capital, StringComparison.Ordinal);
        return place < 0 ? capital : AlikeDigits[place];
    }

    /// <summary>
    /// Changes, insertions, deletions and swaps of neighbours between two texts (optimal string alignment); exact up to 1, else at least 2.
    /// </summary>
    private static int Distance(string one, string other)
    {
        if (Math.Abs(one.Length - other.Length) > 1)
            return 2;
        var start = 0;
        while (start < one.Length && start < other.Length && one[start] == other[start])
            start++;
        var (a, b) = (one[start..], other[start..]);
        while (a.Length > 0 && b.Length > 0 && a[^1] == b[^1])
            (a, b) = (a[..^1], b[..^1]);
        return (a.Length, b.Length) switch
        {
            (0, 0) => 0,
            (<= 1, <= 1) => 1,
            (2, 2) when a[0] == b[1] && a[1] == b[0] => 1,
            _ => 2,
        };
    }
}
