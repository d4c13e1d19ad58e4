using System.Globalization;

namespace Traceability.Domain.Ledger;

/// <summary>Writes a double as ECMAScript does, which is what RFC 8785 asks for.</summary>
/// <remarks>
/// Source: RFC 8785, section 3.2.2.3, which points to ECMA-262 <c>Number::toString</c>, radix 10. With the shortest decimal digits
/// <c>s</c> (<c>k</c> of them) such that value = s * 10^(n-k): plain notation for -6 &lt; n &lt;= 21, else an exponent with its sign.
/// Every finite double has a form; NaN and the infinities are refused. Checked by <c>EcmaScriptNumberTests</c>.
/// </remarks>
public static class EcmaScriptNumber
{
    /// <summary>The canonical digits of a finite value.</summary>
    /// <exception cref="CanonicalJsonException">The value is NaN or infinite.</exception>
    public static string Format(double value)
    {
        if (!double.IsFinite(value))
            throw new CanonicalJsonException($"{value.ToString(CultureInfo.InvariantCulture)} is not a JSON number.");
        if (value == 0)
            return "0"; // negative zero too

        var sign = value < 0 ? "-" : "";
        var (digits, n) = ShortestDigits(Math.Abs(value));
        return sign + Lay(digits, n);
    }

    private static string Lay(string digits, int n)
    {
        var k = digits.Length;
        return n switch
        {
            >= -5 and <= 0 => "0." + new string('0', -n) + digits,
            > 0 and <= 21 when k <= n => digits + new string('0', n - k),
            > 0 and <= 21 => digits[..n] + "." + digits[n..],
            _ => Exponential(digits, n - 1),
        };
    }

    private static string Exponential(string digits, int exponent)
    {
        var mantissa = digits.Length == 1 ? digits : digits[..1] + "." + digits[1..];
        return mantissa + (exponent < 0 ? "e-" : "e+") + Math.Abs(exponent).ToString(CultureInfo.InvariantCulture);
    }

    // "R" gives the shortest digits that read back to the same double, but lays them out in .NET's own way ("1E+30", "1E-06").
    private static (string Digits, int N) ShortestDigits(double value)
    {
        var text = value.ToString("R", CultureInfo.InvariantCulture);
        // Two powers of two (2^-25, 2^-958) come out one digit short in .NET 10 and read back as their neighbour; 17 digits never do.
        if (double.Parse(text, CultureInfo.InvariantCulture) != value)
            text = value.ToString("E16", CultureInfo.InvariantCulture);

        var e = text.IndexOf('E', StringComparison.Ordinal);
        var exponent = e < 0 ? 0 : int.Parse(text.AsSpan(e + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var mantissa = e < 0 ? text : text[..e];

        var point = mantissa.IndexOf('.', StringComparison.Ordinal);
        var wholeDigits = point < 0 ? mantissa.Length : point;
        var all = mantissa.Replace(".", "", StringComparison.Ordinal);
        var withoutLead = all.TrimStart('0');
        return (withoutLead.TrimEnd('0'), wholeDigits + exponent - (all.Length - withoutLead.Length));
    }
}
