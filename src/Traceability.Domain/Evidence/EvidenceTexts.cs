using Traceability.Domain.Values;

namespace Traceability.Domain.Evidence;

/// <summary>What is wrong with a file, and what was noticed in it. Their words are in <c>EvidenceTexts.resx</c>.</summary>
internal static class EvidenceTexts
{
    private static readonly TextFile Words = new(typeof(EvidenceTexts));

    internal static string MoreReadingsThanALogHas(int mostRows) => Words.Say([mostRows]);

    internal static string TooFewReadingsForALog(int readings) => Words.Say([readings]);

    internal static string TimesAreTakenAsUtc => Words.Say();

    internal static string NothingWasLoggedFor(int line, string toText, string usual) => Words.Say([line, toText, usual]);

    internal static string TimeIsNoIsoTime(string field) => Words.Say([field]);

    internal static string TimeHasAZoneAtOnce => Words.Say();
    internal static string TimeHasNoZoneAtOnce => Words.Say();

    internal static string TimeIsInNoSensibleYear(int year) => Words.Say([year]);

    internal static string TimeIsTheSameAsBefore => Words.Say();

    internal static string TimeGoesBack(string step) => Words.Say([step]);

    internal static string TimeJumpsAhead(string step) => Words.Say([step]);

    internal static string SpanOfDays(double totalDays) => Words.Say([totalDays]);

    internal static string SpanOfHours(int span, int minutes) => Words.Say([span, minutes]);

    internal static string SpanOfMinutes(int minutes, int seconds) => Words.Say([minutes, seconds]);

    internal static string FileIsEmptyAndNeedsColumns(string names) => Words.Say([names]);

    internal static string NotPlainTextInUtf8 => Words.Say();
    internal static string ColumnsWithDecimalCommas => Words.Say();

    internal static string LineHasAnotherNumberOfColumns(int fieldsInHeading, int count, string hint) =>
        Words.Say([fieldsInHeading, count, hint]);

    internal static string CommaIsUnclear => Words.Say();
    internal static string IsEmpty => Words.Say();

    internal static string IsNotAPlainNumber(string field) => Words.Say([field]);

    internal static string IsNotBetween(string field, double lowest, double highest) => Words.Say([field, lowest, highest]);

    internal static string TooManyColumns(int fieldsInHeading, int mostColumns) => Words.Say([fieldsInHeading, mostColumns]);

    internal static string HeadingMustNameTheColumn(string name, string heading) => Words.Say([name, heading]);

    internal static string HeadingNamesTheColumnMore(string name) => Words.Say([name]);

    internal static string ColumnsNotUsed(string unused) => Words.Say([unused]);

    internal static string StateTheVoltsAtFullScale => Words.Say();
    internal static string ThereIsNoSuchKindOfEvidence => Words.Say();

    internal static string ReadingStoppedHere(int mostProblems) => Words.Say([mostProblems]);

    internal static string NotAMidFrequency(double frequencyHz, double exactFrequencyHz) => Words.Say([frequencyHz, exactFrequencyHz]);

    internal static string BandsAreMissingBetween(double frequencyHz, double bandFrequencyHz) => Words.Say([frequencyHz, bandFrequencyHz]);

    internal static string AtLine(int line, string message) => Words.Say([line, message]);

    internal static string PictureIsEmpty => Words.Say();
    internal static string NoPicture => Words.Say();

    internal static string MoreThanPoints(int mostPoints) => Words.Say([mostPoints]);

    internal static string TooFewPoints(int count, int fewest) => Words.Say([count, fewest]);

    internal static string FrequencyIsGivenTwice(double now) => Words.Say([now]);

    internal static string FrequenciesMustRise(double now, double before) => Words.Say([now, before]);

    internal static string FileIsEmpty => Words.Say();
    internal static string ThisIsNotAWavFile => Words.Say();
    internal static string FileEndsBeforeItsSamplesBegin => Words.Say();
    internal static string FileEndsInsideItsHeading => Words.Say();

    internal static string FormatIsNotRead(ushort tag, ushort bits) => Words.Say([tag, bits]);

    internal static string SaveTheMeasuredChannelAlone(ushort channels) => Words.Say([channels]);

    internal static string RateIsOutOfRange(uint rate) => Words.Say([rate]);

    internal static string FileIsCutOff(int there, uint size) => Words.Say([there, size]);

    internal static string FormatIsNotStated => Words.Say();
    internal static string VoltsAtFullScaleAreOutOfRange => Words.Say();
    internal static string RecordingIsEmpty => Words.Say();

    internal static string SampleIsNotANumber(int number) => Words.Say([number]);

    internal static string RecordingIsSilent => Words.Say();

    internal static string RecordingIsClipped(int sample, double seconds) => Words.Say([sample, seconds]);
}
