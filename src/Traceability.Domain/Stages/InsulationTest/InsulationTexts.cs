using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>What the insulation test finds, and what it cannot judge. Their words are in <c>InsulationTexts.resx</c>.</summary>
internal static class InsulationTexts
{
    private static readonly TextFile Words = new(typeof(InsulationTexts));

    internal static string TimeWithVoltageCannotBe(decimal seconds) => Words.Say([seconds]);

    internal static string LastReadingWasTakenTooEarly(decimal seconds, decimal? asked) => Words.Say([seconds, asked]);

    internal static string LastReadingWasRecordedEarly(double seconds, decimal asked) => Words.Say([seconds, asked]);

    internal static string PullInIsNotKnown => Words.Say();

    internal static string VoltageIsTooHigh(decimal voltage, decimal highest, decimal? pullIn, decimal factor) =>
        Words.Say([voltage, highest, pullIn, factor]);

    internal static string VoltageAtMost(decimal highest, decimal? pullIn, decimal factor) => Words.Say([highest, pullIn, factor]);

    internal static string FactorIsAtLeastOne(string number) => Words.Say([number]);

    internal static string RouteSaysWhatIsTied(string key, string terminals) => Words.Say([key, terminals]);

    internal static string NoTerminalsOf(string key, string voltage) => Words.Say([key, voltage]);

    internal static string VoltageNeedsItsLimits(string voltage) => Words.Say([voltage]);

    internal static string NoSuchTerminal(string terminal, string terminals) => Words.Say([terminal, terminals]);

    internal static string PolesMustDiffer(string voltage) => Words.Say([voltage]);

    internal static string ConnectionAt(string tied, string against, string label, string? limits) =>
        Words.Say([tied, against, label, limits]);

    internal static string NothingAcrossTheGap => Words.Say();
    internal static string TiedTo => Words.Say();
    internal static string TerminalFilm => Words.Say();
    internal static string TerminalBackplate => Words.Say();
    internal static string TerminalFrontFilm => Words.Say();
    internal static string TerminalFrontBackplate => Words.Say();
    internal static string TerminalRearFilm => Words.Say();
    internal static string TerminalRearBackplate => Words.Say();
    internal static string TerminalBody => Words.Say();

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
