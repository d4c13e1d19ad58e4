using System.Diagnostics.CodeAnalysis;

namespace Traceability.Domain.Codes;

/// <summary>
/// The rule for every text that may be printed as a bar code: serials, lot numbers, codes of carriers, stations, instruments, badges.
/// </summary>
/// <remarks>
/// Up to 40 letters A-Z, digits, hyphens, points and underscores, with a letter or digit first and last; small letters become capitals. No
/// slash and no blank: the text is also part of web addresses and file names. No letters beyond A-Z: a keyboard-wedge scanner types
/// them differently from one keyboard layout to the next. Checked by <c>CodeTextTests</c>.
/// </remarks>
public static class CodeText
{
    /// <summary>The longest text allowed.</summary>
    public const int MaxLength = 40;

    /// <summary>Brings a text into the form that is kept, or says why it cannot be used.</summary>
    /// <param name="text">As typed or sent.</param>
    /// <param name="what">What it is, for the message: "A lot number".</param>
    /// <param name="code">In capitals, without blanks around it.</param>
    /// <param name="problem">Why not, with what is allowed.</param>
    public static bool TryRead(string? text, string what, [NotNullWhen(true)] out string? code, [NotNullWhen(false)] out string? problem)
    {
        var trimmed = (text ?? "").Trim().ToUpperInvariant();
        problem = Problem(trimmed, what);
        code = problem is null ? trimmed : null;
        return problem is null;
    }

    private static string? Problem(string text, string what)
    {
        if (text.Length == 0)
            return CodeTexts.MustNotBeEmpty(what);
        if (text.Length > MaxLength)
            return CodeTexts.MayHaveSoManyCharacters(what, MaxLength, text.Length);
        foreach (var c in text)
        {
            if (char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '_')
                continue;
            var shown =
                char.IsWhiteSpace(c) ? CodeTexts.ABlank
                : char.IsControl(c) || char.IsSurrogate(c) ? $"U+{(int)c:X4}"
                : $"\"{c}\"";
            return CodeTexts.MayHaveTheseCharacters(what, shown);
        }
        return char.IsAsciiLetterOrDigit(text[0]) && char.IsAsciiLetterOrDigit(text[^1])
            ? null
            : CodeTexts.MustBeginAndEndWithLetterOrDigit(what);
    }
}
