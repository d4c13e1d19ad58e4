using Traceability.Domain.Values;

namespace Traceability.Domain.Codes;

/// <summary>What is wrong with a code that was typed. Their words are in <c>CodeTexts.resx</c>.</summary>
internal static class CodeTexts
{
    private static readonly TextFile Words = new(typeof(CodeTexts));

    internal static string MustNotBeEmpty(string what) => Words.Say([what]);

    internal static string MayHaveSoManyCharacters(string what, int maxLength, int text) => Words.Say([what, maxLength, text]);

    internal static string ABlank => Words.Say();

    internal static string MayHaveTheseCharacters(string what, string shown) => Words.Say([what, shown]);

    internal static string MustBeginAndEndWithLetterOrDigit(string what) => Words.Say([what]);

    internal static string PrintedId => Words.Say();
}
