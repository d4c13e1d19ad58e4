using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Findings;

/// <summary>What the acoustic tests find, and what they cannot judge. Their words are in <c>AcousticTexts.resx</c>.</summary>
internal static class AcousticTexts
{
    private static readonly TextFile Words = new(typeof(AcousticTexts));

    internal static string RecordingIsEmpty => Words.Say();

    internal static string SampleIsNoNumber(int number) => Words.Say([number]);

    internal static string RateIsTooLowForCrackles(double rateHz, double lowestHz) => Words.Say([rateHz, lowestHz]);

    internal static string RecordingIsSilentOrCoarse => Words.Say();

    internal static string PolarHasTooFewAngles(int polarCount) => Words.Say([polarCount]);

    internal static string PolarMustRunHalfRound => Words.Say();

    internal static string LevelAtAngleIsNoNumber(int number) => Words.Say([number]);

    internal static string AnglesMustRise(int number) => Words.Say([number]);

    internal static string NearFieldOfTheSource(decimal distance, double temperatureC, double nearFieldHz) =>
        Words.Say([distance, temperatureC, nearFieldHz]);

    internal static string AirIsNothingToMeasureIn(decimal temperature, decimal pressure, decimal humidity) =>
        Words.Say([temperature, pressure, humidity]);

    internal static string AirIsOutsideReferenceConditions(decimal temperature, decimal pressure, decimal humidity) =>
        Words.Say([temperature, pressure, humidity]);

    internal static string ResponseCannotBeRead(string file, string? problem) => Words.Say([file, problem]);

    internal static string NoIndexForAFileWithoutAngle(string odd) => Words.Say([odd]);

    internal static string NoIndexForTooFewAngles(string degrees) => Words.Say([degrees]);

    internal static string NoIndexForASilentFile(string silent, double hz) => Words.Say([silent, hz]);

    internal static string CrackleThresholdMustLieBetween(string timesFloor) => Words.Say([timesFloor]);

    internal static string MustNotBeNegative(string holdMs) => Words.Say([holdMs]);

    internal static string NoNoiseLevelFrom(string file, string problems) => Words.Say([file, problems]);

    internal static string NothingWasMadeOfTheRecording(string file, string problems) => Words.Say([file, problems]);

    internal static string NoNoiseLevelFromTooFewSamples(string file, int volts) => Words.Say([file, volts]);

    internal static string SensitivityIsNotKnown => Words.Say();
    internal static string ThereIsNoNoiseInIt => Words.Say();

    internal static string StationIsTooLoud(decimal station, double leastDistanceDb, double whole) =>
        Words.Say([station, leastDistanceDb, whole]);

    internal static string StationNoiseWasTakenOff(decimal station, double whole) => Words.Say([station, whole]);

    internal static string NoCracklesCounted(string problem) => Words.Say([problem]);

    internal static string NoCrackle(double duration, double threshold) => Words.Say([duration, threshold]);

    internal static string OneCrackle(double duration, double threshold, string times) => Words.Say([duration, threshold, times]);

    internal static string Crackles(int countedCount, double duration, double threshold, string times) =>
        Words.Say([countedCount, duration, threshold, times]);

    internal static string CracklesAndLater(int countedCount, double duration, double threshold, string times) =>
        Words.Say([countedCount, duration, threshold, times]);

    internal static string AfterTheHighPass(string counted, double cornerHz) => Words.Say([counted, cornerHz]);

    internal static string TooShortForACount(double duration, double leastSeconds, int counted) =>
        Words.Say([duration, leastSeconds, counted]);

    internal static string SeveralSensitivities(string names) => Words.Say([names]);

    internal static string NoiseNamesNoPattern(string name, string names) => Words.Say([name, names]);

    internal static string NoiseHasNoFileOfItsPattern(string name, string kind, string ending) => Words.Say([name, kind, ending]);

    internal static string SideOnItsOwnAxisIsNoBack(string name, string match) => Words.Say([name, match]);

    internal static string ComparesWithTheNominalValueOf(string name, string name2) => Words.Say([name, name2]);

    internal static string OutputsGiveNoSensitivity(decimal output, decimal reference) => Words.Say([output, reference]);

    internal static string SensitivityOfTheReferenceIsNotKnown(string referenceSensitivity) => Words.Say([referenceSensitivity]);

    internal static string NoAirToCorrectTheReferenceFor => Words.Say();

    internal static string WithAndWithoutCorrection(string label, double corrected, double corrected2, double db) =>
        Words.Say([label, corrected, corrected2, db]);

    internal static string IsComputedFromAnother(string name, string name2) => Words.Say([name, name2]);

    internal static string ResponseHasNothingAtHz(double normalisedAtHz) => Words.Say([normalisedAtHz]);

    internal static string ReferenceCurveHasNothingAtHz(double normalisedAtHz) => Words.Say([normalisedAtHz]);

    internal static string MaskAsksForNothing => Words.Say();

    internal static string OutsideTheMask(double first, double hz, double deviationDb, string wHz) =>
        Words.Say([first, hz, deviationDb, wHz]);

    internal static string InsideTheMask(double hz, double marginDb) => Words.Say([hz, marginDb]);

    internal static string FromToIsAllowed(double low, double high) => Words.Say([low, high]);

    internal static string OrMoreIsAllowed(double low) => Words.Say([low]);

    internal static string OrLessIsAllowed(double? upperDb) => Words.Say([upperDb]);

    internal static string TheResponse => Words.Say();
    internal static string TheReferenceCurve => Words.Say();

    internal static string MaskBeginsEarlier(double lowestHz, string name, double curveLowestHz) =>
        Words.Say([lowestHz, name, curveLowestHz]);

    internal static string MaskEndsLater(double highestHz, string name, double curveHighestHz) =>
        Words.Say([highestHz, name, curveHighestHz]);

    internal static string CurveHasTooFewPoints(int count) => Words.Say([count]);

    internal static string PointIsNoFrequency(int number, double frequencyHz) => Words.Say([number, frequencyHz]);

    internal static string PointHasNoLevel(int number, double frequencyHz, double levelDb) => Words.Say([number, frequencyHz, levelDb]);

    internal static string PointStandsThereTwice(int number, double frequencyHz) => Words.Say([number, frequencyHz]);

    internal static string PointsMustRise(int number, double frequencyHz, double frequencyHz2) =>
        Words.Say([number, frequencyHz, frequencyHz2]);

    internal static string ResponseNeedsParametersMask => Words.Say();

    internal static string ProblemOfTheReferenceCurve(string reference) => Words.Say([reference]);

    internal static string ResponseNeedsItsFile => Words.Say();

    internal static string MaskedEvidenceIsNoResponse(string name) => Words.Say([name]);

    internal static string SmoothingIsTheBOfAnOctave(string smoothing) => Words.Say([smoothing]);

    internal static string WhatItIsComputedFromIsMissing(string missing, string texts) => Words.Say([missing, texts]);

    internal static string ResponseCannotBeJudged(string name, string? problem) => Words.Say([name, problem]);

    internal static string MaskHasTooFewCorners(int count) => Words.Say([count]);

    internal static string CornerIsNoFrequency(int number, double frequencyHz) => Words.Say([number, frequencyHz]);

    internal static string CornerHasNoLimit(int number, double frequencyHz) => Words.Say([number, frequencyHz]);

    internal static string CornerHasLimitsCrossed(int number, double frequencyHz, double? lowerDb, double? upperDb) =>
        Words.Say([number, frequencyHz, lowerDb, upperDb]);

    internal static string CornersMustRise(int number, double frequencyHz, double frequencyHz2) =>
        Words.Say([number, frequencyHz, frequencyHz2]);

    internal static string CornerStandsThereTooOften(int number, double frequencyHz) => Words.Say([number, frequencyHz]);

    internal static string MaskCoversOneFrequencyOnly => Words.Say();
}
