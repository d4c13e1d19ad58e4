namespace Traceability.Domain.Codes;

/// <summary>The number by which anybody can ask about a certificate: drawn at random, so that none can be guessed from another.</summary>
/// <remarks>
/// Letters and digits without those that are taken for each other. It ends the address that is printed beside it as a code. Checked by
/// <c>CertificateNumberTests</c>.
/// </remarks>
public static class CertificateNumber
{
    /// <summary>The characters it may hold.</summary>
    public const string Characters = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";

    /// <summary>How many it holds: 20 of 32 are 100 random bits.</summary>
    public const int Length = 20;

    private const string Address = "/verify/";

    /// <summary>
    /// The number in a text: typed with blanks and hyphens and in either case, or the end of an address. One character too many or too few
    /// is let through, so that it can be looked for; anything else is no number of a certificate, and null.
    /// </summary>
    public static string? In(string text)
    {
        var at = text.LastIndexOf(Address, StringComparison.OrdinalIgnoreCase);
        var typed = at < 0 ? text : text[(at + Address.Length)..].Split('?', '#', '/')[0];
        var number = string.Concat(typed.Where(c => c is not ('-' or ' '))).ToUpperInvariant();
        return number.Length is >= Length - 1 and <= Length + 1 && number.All(char.IsAsciiLetterOrDigit) ? number : null;
    }
}
