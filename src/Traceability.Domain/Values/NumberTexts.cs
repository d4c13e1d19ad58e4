namespace Traceability.Domain.Values;

/// <summary>What is wrong with a number or a unit that was typed. Their words are in <c>NumberTexts.resx</c>.</summary>
internal static class NumberTexts
{
    private static readonly TextFile Words = new(typeof(NumberTexts));

    internal static string NoSuchUnitWrite(string? code, string meant) => Words.Say([code, meant]);

    internal static string NoSuchUnit(string? code, string known) => Words.Say([code, known]);

    internal static string JoinedByOr => Words.Say();

    internal static string TooManyDigits(int maxSignificantDigits) => Words.Say([maxSignificantDigits]);

    internal static string ExponentIsOutOfRange => Words.Say();
    internal static string NumberIsOutOfRange => Words.Say();
    internal static string TypeANumber => Words.Say();

    internal static string TooLongForANumber(int length) => Words.Say([length]);

    internal static string ThousandsOrDecimals(string typed, string value, string ordinal) => Words.Say([typed, value, ordinal]);

    internal static string NoReadingIsInfinite => Words.Say();
    internal static string TypeTheNumberAlone => Words.Say();
    internal static string TypeAPlainNumber => Words.Say();

    internal static string IsNotADay(string typed) => Words.Say([typed]);
}
