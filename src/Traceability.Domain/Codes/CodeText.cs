using System.Diagnostics.CodeAnalysis;

namespace Traceability.Domain.Codes;

/// <summary>The rule for every text that may be printed as a bar code: serials, lot numbers, codes of carriers, stations, instruments, badges.</summary>
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
    public static bool TryRead(
        string? text, string what, [NotNullWhen(true)] out string? code, [NotNullWhen(false)] out string? problem)
    {
        var trimmed = (text ?? "").Trim().ToUpperInvariant();
        problem = Problem(trimmed, what);
        code = problem is null ? trimmed : null;
        return problem is null;
    }

    private static string? Problem(string text, string what)
    {
        if (text.Length == 0) return $"{what} must not be empty.";
        if (text.Length > MaxLength) return $"{what} may have {MaxLength} characters; this has {text.Length}.";
        foreach (var c in text)
        {
            if (char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '_') continue;
            var shown = char.IsWhiteSpace(c) ? "a blank" : char.IsControl(c) || char.IsSurrogate(c) ? $"U+{(int)c:X4}" : $"\"{c}\"";
            return $"{what} may have the letters A-Z, digits, \"-\", \".\" and \"_\"; this has {shown}.";
        }
        return char.IsAsciiLetterOrDigit(text[0]) && char.IsAsciiLetterOrDigit(text[^1])
            ? null
            : $"{what} must begin and end with a letter or digit.";
    }
}
