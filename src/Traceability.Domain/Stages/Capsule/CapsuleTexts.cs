using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>What the capsule's methods find, and what they cannot judge. Their words are in <c>CapsuleTexts.resx</c>.</summary>
internal static class CapsuleTexts
{
    private static readonly TextFile Words = new(typeof(CapsuleTexts));

    internal static string OfTheFront => Words.Say();
    internal static string OfTheRear => Words.Say();
    internal static string EffectiveAreaIsAtMost => Words.Say();

    internal static string CapacitanceCannotBe(decimal entered, decimal stray) => Words.Say([entered, stray]);

    internal static string CheckThemAndTheirUnits => Words.Say();
    internal static string FrontAndRearAreOfDifferentFilmLots => Words.Say();

    internal static string DiaphragmHasNoTensionOnRecord(string inText) => Words.Say([inText]);

    internal static string DiaphragmHasNoResonanceOnRecord(string inText) => Words.Say([inText]);

    internal static string PullInVoltageIsNotStated(string inText) => Words.Say([inText]);

    internal static string FilmWouldFall(double voltageV, string inText) => Words.Say([voltageV, inText]);

    internal static string ShareOfPullInVoltage(double voltageV, double share, string inText, double usualShare) =>
        Words.Say([voltageV, share, inText, usualShare]);
}
