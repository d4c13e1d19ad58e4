namespace Traceability.Domain.Codes;

/// <summary>The check character of ISO/IEC 7064, hybrid system MOD 37,36, over digits and capital letters.</summary>
/// <remarks>
/// With the values 0..9, A = 10 .. Z = 35 and P = 36 at the start, each character gives S = (P + value) mod 36 (0 counts as 36) and then
/// P = 2 S mod 37; the check character c makes (P + c) mod 36 = 1. Anything but ASCII letters and digits is passed over; case makes no
/// difference.
/// <para>
/// Every single wrong character is noticed, and every swap of two neighbours unless their values follow each other (1 and 2, A and B, Z and
/// 0): of those swaps about one in 36 slips through. That is a property of the standard's system and not of this code.
/// </para>
/// Source: ISO/IEC 7064:2003 as used by the GRid, worked example A12425GABC1234002 -> M (from memory). Checked by
/// <c>CheckCharacterTests</c>.
/// </remarks>
public static class CheckCharacter
{
    private const string Alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    /// <summary>The check character for a text that has at least one letter or digit.</summary>
    /// <exception cref="ArgumentException">There is nothing to check.</exception>
    public static char For(ReadOnlySpan<char> text)
    {
        var p = Alphabet.Length;
        var any = false;
        foreach (var c in text)
        {
            if (!char.IsAsciiLetterOrDigit(c))
                continue;
            any = true;
            var s = (p + Alphabet.IndexOf(char.ToUpperInvariant(c), StringComparison.Ordinal)) % Alphabet.Length;
            p = (s == 0 ? Alphabet.Length : s) * 2 % (Alphabet.Length + 1);
        }
        if (!any)
            throw new ArgumentException("A check character needs letters or digits to check.", nameof(text));
        return Alphabet[(Alphabet.Length + 1 - p) % Alphabet.Length];
    }
}
