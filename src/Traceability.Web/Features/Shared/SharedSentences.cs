using Traceability.Domain.Values;

namespace Traceability.Web.Features.Shared;

/// <summary>What every page may have to say. Their words are in <c>SharedSentences.resx</c>.</summary>
internal static class SharedSentences
{
    private static readonly TextFile Words = new(typeof(SharedSentences));

    internal static string RolesDoNotInclude(string person, string rs) => Words.Say([person, rs]);

    internal static string CannotBeReadHere(string? attemptedValue) => Words.Say([attemptedValue]);

    internal static string TextIsTooLong(int longestText) => Words.Say([longestText]);

    internal static string SomeNumbersCannotBeRead => Words.Say();

    internal static string IsNotKnownHere(string field, string given, string knowns) => Words.Say([field, given, knowns]);

    internal static string SecretWasShownBefore => Words.Say();
    internal static string FormWasSentBefore => Words.Say();
}
