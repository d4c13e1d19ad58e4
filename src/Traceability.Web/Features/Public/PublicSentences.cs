using Traceability.Domain.Values;

namespace Traceability.Web.Features.Public;

/// <summary>What anybody is told of a certificate. Their words are in <c>PublicSentences.resx</c>.</summary>
internal static class PublicSentences
{
    private static readonly TextFile Words = new(typeof(PublicSentences));

    internal static string NoCertificateWithThisIdWasIssued => Words.Say();
    internal static string ThisFileIsNotByteForByte => Words.Say();
    internal static string GenuineAndCurrent => Words.Say();
    internal static string GenuineButOutOfUse => Words.Say();
    internal static string GenuineButBack => Words.Say();

    internal static string GenuineButReplaced(int revision) => Words.Say([revision]);

    internal static string GenuineButWorkedOn => Words.Say();
}
