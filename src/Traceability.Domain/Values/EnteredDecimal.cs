using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Traceability.Domain.Values;

/// <summary>A number as a person or an instrument entered it: its value, and its digits so that 12.50 stays 12.50.</summary>
/// <remarks>
/// Taken: an optional sign, digits, a decimal point or a decimal comma where it can be nothing else, an exponent from -15 to 15. Refused:
/// NaN and infinity, units, blanks and other marks between digits, a comma that may part thousands (1,234), more than 12 significant
/// digits, a magnitude outside 1e-15..1e15 other than zero. The limits are common practice, no source. Checked by
/// <c>EnteredDecimalTests</c>.
/// </remarks>
public sealed partial record EnteredDecimal
{
    /// <summary>The most significant digits that are believed.</summary>
    public const int MaxSignificantDigits = 12;

    private const int MaxLength = 40;
    private const decimal Smallest = 1e-15m;
    private const decimal Largest = 1e15m;

    private EnteredDecimal(decimal value, string digits, bool isGreaterThan = false) =>
        (Value, Digits, IsGreaterThan) = (value, digits, isGreaterThan);

    /// <summary>The value, exactly.</summary>
    public decimal Value { get; }

    /// <summary>The digits as entered, with a decimal point, without plus sign and needless zeros in front.</summary>
    public string Digits { get; }

    /// <summary>
    /// True for ">400": the instrument ran out of range, and the value is a bound from below, never a number to reckon with.
    /// </summary>
    public bool IsGreaterThan { get; }

    /// <summary>Reads what was entered for a reading: a number, or ">" and a number.</summary>
    public static bool TryParseReading(
        string? text,
        [NotNullWhen(true)] out EnteredDecimal? number,
        [NotNullWhen(false)] out string? problem
    )
    {
        var typed = (text ?? "").Trim();
        if (!typed.StartsWith('>'))
            return TryParse(typed, out number, out problem);
        if (!TryParse(typed[1..], out number, out problem))
            return false;
        number = new(number.Value, ">" + number.Digits, true);
        return true;
    }

    /// <summary>Reads what was entered, or says what to enter instead.</summary>
    public static bool TryParse(string? text, [NotNullWhen(true)] out EnteredDecimal? number, [NotNullWhen(false)] out string? problem)
    {
        var typed = (text ?? "").Trim().Replace('\u2212', '-');
        number = null;
        problem = Unreadable(typed);
        if (problem is not null)
            return false;

        var parts = Form().Match(typed);
        var whole = parts.Groups["whole"].Value.TrimStart('0') is { Length: > 0 } kept ? kept : "0";
        var fraction = parts.Groups["fraction"].Value;
        var exponent = parts.Groups["exponent"].Value;
        var digits = whole + (fraction.Length > 0 ? "." + fraction : "") + (exponent.Length > 0 ? "e" + exponent : "");

        problem =
            SignificantDigits(whole, fraction) > MaxSignificantDigits ? NumberTexts.TooManyDigits(MaxSignificantDigits)
            : exponent.Length > 0 && int.Parse(exponent, CultureInfo.InvariantCulture) is < -15 or > 15 ? NumberTexts.ExponentIsOutOfRange
            : null;
        if (problem is not null)
            return false;

        var value = decimal.Parse(digits, NumberStyles.Float, CultureInfo.InvariantCulture);
        if (value is not 0 and (< Smallest or > Largest))
        {
            problem = NumberTexts.NumberIsOutOfRange;
            return false;
        }
        var isNegative = parts.Groups["sign"].Value == "-" && value != 0;
        number = new(isNegative ? -value : value, (isNegative ? "-" : "") + digits);
        return true;
    }

    /// <inheritdoc/>
    public override string ToString() => Digits;

    private static string? Unreadable(string typed)
    {
        if (typed.Length == 0)
            return NumberTexts.TypeANumber;
        if (typed.Length > MaxLength)
            return NumberTexts.TooLongForANumber(typed.Length);
        if (Form().IsMatch(typed))
            return PartsThousands().IsMatch(typed)
                ? NumberTexts.ThousandsOrDecimals(typed, typed.Replace(',', '.'), typed.Replace(",", "", StringComparison.Ordinal))
                : null;
        if (NotFinite().IsMatch(typed))
            return NumberTexts.NoReadingIsInfinite;
        if (WithUnit().IsMatch(typed))
            return NumberTexts.TypeTheNumberAlone;
        return NumberTexts.TypeAPlainNumber;
    }

    private static int SignificantDigits(string whole, string fraction) =>
        fraction.Length == 0 ? whole.TrimEnd('0').Length : (whole + fraction).TrimStart('0').Length;

    [GeneratedRegex(
        @"^(?<sign>[+-]?)(?:(?<whole>[0-9]+)(?:[.,](?<fraction>[0-9]+))?|[.,](?<fraction>[0-9]+))(?:[eE]\+?(?<exponent>-?[0-9]{1,3}))?$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Form();

    [GeneratedRegex("^[+-]?[1-9][0-9]{0,2},[0-9]{3}$", RegexOptions.CultureInvariant)]
    private static partial Regex PartsThousands();

    [GeneratedRegex("^[+-]?(nan|inf|infinity|∞)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NotFinite();

    [GeneratedRegex(@"^[+-]?[0-9.,]+\s*[\p{L}%°µ/]+[\p{L}%°µ/0-9]*$", RegexOptions.CultureInvariant)]
    private static partial Regex WithUnit();
}
