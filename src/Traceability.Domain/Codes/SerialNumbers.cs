using System.Globalization;

namespace Traceability.Domain.Codes;

/// <summary>Proposes serials for parts that are registered without one, such as <c>D26-00017</c>.</summary>
/// <remarks>
/// Letters of the kind, two digits of the year, hyphen, running number of that kind in that year, padded: within a kind, the order of the
/// text is the order of time. Years 2000..2099 and numbers 1..99999; beyond, the order would break, so it is an error. Checked by
/// <c>SerialNumbersTests</c>.
/// </remarks>
public static class SerialNumbers
{
    /// <summary>The last running number of a year.</summary>
    public const int LastOfYear = 99_999;

    /// <summary>The serial of the <paramref name="count"/>-th part of its kind in a year.</summary>
    /// <param name="kindLetters">One to three letters for the kind of part.</param>
    /// <param name="year">The year, 2000..2099.</param>
    /// <param name="count">The running number, 1..99999.</param>
    public static string Propose(string kindLetters, int year, int count)
    {
        ArgumentNullException.ThrowIfNull(kindLetters);
        if (kindLetters.Length is < 1 or > 3 || !kindLetters.All(char.IsAsciiLetter))
            throw new ArgumentException("The kind is one to three letters.", nameof(kindLetters));
        ArgumentOutOfRangeException.ThrowIfLessThan(year, 2000);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(year, 2099);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, LastOfYear);
        return string.Create(CultureInfo.InvariantCulture, $"{kindLetters.ToUpperInvariant()}{year % 100:00}-{count:00000}");
    }
}
