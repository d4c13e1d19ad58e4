using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.BoardSet;

/// <summary>What the check of boards finds, and what it cannot judge. Their words are in <c>BoardTexts.resx</c>.</summary>
internal static class BoardTexts
{
    private static readonly TextFile Words = new(typeof(BoardTexts));

    internal static string MethodReadsTheCurrent => Words.Say();

    internal static string QualityLimitIsNotInTheTable(string qualityLimit, decimal limit, string limits) =>
        Words.Say([qualityLimit, limit, limits]);

    internal static string SupplyCannotBe(decimal source, decimal terminal, decimal current) => Words.Say([source, terminal, current]);

    internal static string TerminalIsAboveSupply(decimal terminal, decimal source) => Words.Say([terminal, source]);

    internal static string BoardNumberCannotBe(decimal board) => Words.Say([board]);

    internal static string BoardStillNeeds(string open) => Words.Say([open]);

    internal static string SampleStillNeeds(string lot, string open) => Words.Say([lot, open]);

    internal static string NoPanelLotOfKnownSizeIsFitted => Words.Say();

    internal static string AllBoardsAreTestedFully(string lot, int lotSize) => Words.Say([lot, lotSize]);

    internal static string BoardIsInTheSample(string lot, int lotSize, int sampleSize, char letter, int accept, int reject, int board) =>
        Words.Say([lot, lotSize, sampleSize, letter, accept, reject, board]);

    internal static string BoardIsNotInTheSample(string lot, int lotSize, int sampleSize, char letter, int accept, int reject, int board) =>
        Words.Say([lot, lotSize, sampleSize, letter, accept, reject, board]);

    internal static string LotTestedSoFar(string lot, int nonconforming, int tested, int sampleSize, int accept) =>
        Words.Say([lot, nonconforming, tested, sampleSize, accept]);

    internal static string MoreOutsideTheSample(string count, int nonconformingOutside) => Words.Say([count, nonconformingOutside]);

    internal static string LotFailsItsPlan(string all) => Words.Say([all]);

    internal static string LotIsAccepted(string all) => Words.Say([all]);
}
