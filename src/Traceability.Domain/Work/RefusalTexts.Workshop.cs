namespace Traceability.Domain.Work;

internal static partial class RefusalTexts
{
    internal static string WorkshopChangedMeanwhile(int latest, int seen) => Words.Say([latest, seen]);

    internal static string NameTheWorkshopBeforeItsLogo => Words.Say();

    internal static string WorkshopHasAName(int most) => Words.Say([most]);

    internal static string TextHasAtMost(int most) => Words.Say([most]);

    internal static string ThereIsNoTimeZone(string zone) => Words.Say([zone]);

    internal static string AddressLeadsNowhere(string address) => Words.Say([address]);

    internal static string LanguageHasNoWords(string language, string known) => Words.Say([language, known]);

    internal static string SayWhySingleHanded => Words.Say();

    internal static string SayWhyAlone => Words.Say();

    internal static string SayWhichStageIsSignedFor(string stages) => Words.Say([stages]);

    internal static string NoSecondSignInIsNeeded(string person, string stage) => Words.Say([person, stage]);

    internal static string AnotherDoesTheStage(string person, string stage) => Words.Say([person, stage]);
}
