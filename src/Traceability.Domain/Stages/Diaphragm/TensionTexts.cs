using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>What tuning and bonding find, and what they cannot judge. Their words are in <c>TensionTexts.resx</c>.</summary>
internal static class TensionTexts
{
    private static readonly TextFile Words = new(typeof(TensionTexts));

    internal static string MethodReadsTheAdhesiveLot => Words.Say();

    internal static string MinutesSinceMixingCannotBe(decimal entered) => Words.Say([entered]);

    internal static string ClockOfTheLotCounts(decimal entered, string adhesiveNumber, decimal byClock) =>
        Words.Say([entered, adhesiveNumber, byClock]);

    internal static string ResonanceGivesNoTension(decimal measured) => Words.Say([measured]);

    internal static string NoReadingInTheJig => Words.Say();
    internal static string AirHereOrAtTuningIsNoRoomAir => Words.Say();
    internal static string AirIsNoRoomAir => Words.Say();
    internal static string NoFilmThickness => Words.Say();

    internal static string RunOnThePlate(int attemptNumber) => Words.Say([attemptNumber]);

    internal static string PoissonRatioIsAtMost => Words.Say();

    internal static string StressIsNearTheYieldStress(double share, decimal yieldMpa) => Words.Say([share, yieldMpa]);

    internal static string ShiftOnTheRing(double value, double value2) => Words.Say([value, value2]);

    internal static string ShiftSinceTheTuning(double warmerK, double damperPct, double shift) => Words.Say([warmerK, damperPct, shift]);
}
