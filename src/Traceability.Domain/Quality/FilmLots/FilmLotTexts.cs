using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>What is said about a film lot. Its words are in <c>FilmLotTexts.resx</c>.</summary>
internal static class FilmLotTexts
{
    private static readonly TextFile Words = new(typeof(FilmLotTexts));

    internal static string Started(int started, int onItsWay) => Words.Say([started, onItsWay]);

    internal static string NothingFailed => Words.Say();

    internal static string FailedAt(string stages) => Words.Say([stages]);

    internal static string OfThoseThatReached(string stage, int failed, int reached) => Words.Say([stage, failed, reached]);

    internal static string YieldOver(int stages, double yield, double lower, double upper) => Words.Say([stages, yield, lower, upper]);

    internal static string CapsulesCountOnce => Words.Say();

    internal static string ReportedByHand(string kind) => Words.Say([kind]);

    internal static string CameBack => Words.Say();
}
