using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Tracing;

/// <summary>What the check after a test says about the test. Their words are in <c>ProofTexts.resx</c>.</summary>
internal static class ProofTexts
{
    private static readonly TextFile Words = new(typeof(ProofTexts));

    internal static string FailedItsCheckAfterwards(string code, string occurredAt) => Words.Say([code, occurredAt]);

    internal static string WasFoundGoodLater(string code, string occurredAt) => Words.Say([code, occurredAt]);

    internal static string WasNotCheckedAgain(string code) => Words.Say([code]);

    internal static string IsStillToBeChecked(string code) => Words.Say([code]);
}
