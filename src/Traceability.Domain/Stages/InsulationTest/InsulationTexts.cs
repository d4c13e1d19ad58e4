using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>What the insulation test finds, and what it cannot judge. Their words are in <c>InsulationTexts.resx</c>.</summary>
internal static class InsulationTexts
{
    private static readonly TextFile Words = new(typeof(InsulationTexts));

    internal static string TimeWithVoltageCannotBe(decimal seconds) => Words.Say([seconds]);
    internal static string LastReadingWasTakenTooEarly(decimal seconds, decimal? asked) => Words.Say([seconds, asked]);
    internal static string LastReadingWasRecordedEarly(double seconds, decimal asked) => Words.Say([seconds, asked]);
    internal static string TestVoltageGivesNoResistance(decimal voltage) => Words.Say([voltage]);
    internal static string CurrentsGiveNoResistance(decimal early, decimal late) => Words.Say([early, late]);
    internal static string ResistanceFell => Words.Say();
    internal static string EmptyFixtureIsTooPoor(decimal fixture) => Words.Say([fixture]);
    internal static string CannotBeAResistance(string name, decimal impossible) => Words.Say([name, impossible]);
    internal static string ReadingsCannotBelongTogether(decimal early, decimal late) => Words.Say([early, late]);
    internal static string ReadingFell(decimal early, decimal late) => Words.Say([early, late]);
    internal static string NoRatioOfABound => Words.Say();
    internal static string AfterCleanings(int attemptNumber, int attemptNumber2) => Words.Say([attemptNumber, attemptNumber2]);
    internal static string AfterOneCleaning(int attemptNumber, int attemptNumber2) => Words.Say([attemptNumber, attemptNumber2]);
}
