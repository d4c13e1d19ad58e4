namespace Traceability.Domain.Records;

/// <summary>What a PIN looks like.</summary>
public static class PinDigits
{
    /// <summary>The fewest digits of a PIN.</summary>
    public const int Fewest = 4;

    /// <summary>The most digits of a PIN.</summary>
    public const int Most = 12;

    /// <summary>Whether a text is a PIN at all: 4 to 12 digits.</summary>
    public static bool Are(string text) => text.Length is >= Fewest and <= Most && text.All(char.IsAsciiDigit);

    /// <summary>
    /// Whether the digits are all equal, or each is above or each below the one before, such as 7777, 1234 or 9630: they are the first that
    /// anybody tries (common practice, no source).
    /// </summary>
    /// <param name="pin">A PIN of at least two digits.</param>
    public static bool AreInARow(string pin)
    {
        var steps = pin.Zip(pin.Skip(1), (one, next) => Math.Sign(next - one)).Distinct().ToList();
        return steps.Count == 1;
    }
}
