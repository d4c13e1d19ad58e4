using Traceability.Domain.Values;

namespace Traceability.Domain.Routes;

/// <summary>What is wrong with a route file, limits in words, and cautions. Their words are in <c>RouteTexts.resx</c>.</summary>
internal static class RouteTexts
{
    private static readonly TextFile Words = new(typeof(RouteTexts));

    internal static string CautionHotTip => Words.Say();
    internal static string CautionHotPlate => Words.Say();
    internal static string CautionAdhesive => Words.Say();
    internal static string CautionSolvent => Words.Say();
    internal static string CautionHighVoltage => Words.Say();
    internal static string CautionStoredCharge => Words.Say();
    internal static string CautionSolder => Words.Say();
    internal static string CautionClimateCabinet => Words.Say();
    internal static string CautionLoudSound => Words.Say();
    internal static string CautionEsd => Words.Say();
    internal static string CautionMains => Words.Say();
    internal static string LocalRulesPrevail => Words.Say();

    internal static string FromTo(decimal lower, decimal upper, string unit) => Words.Say([lower, upper, unit]);

    internal static string IsBelow => Words.Say();
    internal static string IsAbove => Words.Say();

    internal static string AtLeast(decimal lower, string unit) => Words.Say([lower, unit]);

    internal static string AtMost(decimal upper, string unit) => Words.Say([upper, unit]);

    internal static string NoLimit => Words.Say();

    internal static string MethodReadsNo(string method, string key) => Words.Say([method, key]);

    internal static string MethodReadsNoNumbers(string method, string name) => Words.Say([method, name]);

    internal static string MethodReadsNoSuchNumber(string method, string name, string known) => Words.Say([method, name, known]);

    internal static string NumberMustBeAboveZero(string name) => Words.Say([name]);

    internal static string APhase => Words.Say();
    internal static string AMaskPoint => Words.Say();
    internal static string ATestConnection => Words.Say();
    internal static string APointOfTheReferenceCurve => Words.Say();

    internal static string NotYaml(string message) => Words.Say([message]);

    internal static string YamlBreaksOff => Words.Say();
    internal static string FileIsEmpty => Words.Say();
    internal static string OneRouteInAFile => Words.Say();

    internal static string AtLine(long line, string message) => Words.Say([line, message]);

    internal static string TheRoute => Words.Say();
    internal static string AStage => Words.Say();
    internal static string RouteNeedsAtLeastOneStage => Words.Say();

    internal static string MayNotApproveTheirOwn(string author) => Words.Say([author]);

    internal static string LettersDigitsAndHyphens => Words.Say();
    internal static string SmallLettersAndHyphens => Words.Say();
    internal static string OneToThreeLetters => Words.Say();
    internal static string SlotAcceptsEitherLotKindOrPartKind => Words.Say();

    internal static string LimitsContradictEachOther(string name, decimal? nominal, decimal? lower, decimal? upper) =>
        Words.Say([name, nominal, lower, upper]);

    internal static string UncertaintyMustBeAboveZero => Words.Say();

    internal static string GuardedAcceptanceNeedsMore(string name) => Words.Say([name]);

    internal static string GuardBandsLeaveNothing(string name, decimal guardBand) => Words.Say([name, guardBand]);

    internal static string ResolutionMustBeAboveZero => Words.Say();

    internal static string UnknownDecisionRule(string rule, string simpleAcceptance, string guardedAcceptance) =>
        Words.Say([rule, simpleAcceptance, guardedAcceptance]);

    internal static string UnknownKindOfEvidence(string needKind, string evidenceKindsCodes) => Words.Say([needKind, evidenceKindsCodes]);

    internal static string AFurtherCharacteristic => Words.Say();
    internal static string DifferenceMustNotBeNegative => Words.Say();
    internal static string ASlot => Words.Say();

    internal static string PositionIsThereTwice(string position) => Words.Say([position]);

    internal static string ACharacteristic => Words.Say();

    internal static string CharacteristicIsThereTwice(string characteristic) => Words.Say([characteristic]);

    internal static string APieceOfEvidence => Words.Say();

    internal static string EvidenceIsThereTwice(string evidence) => Words.Say([evidence]);

    internal static string AWait => Words.Say();
    internal static string AWindow => Words.Say();

    internal static string RefersToNoEarlierStage(string name) => Words.Say([name]);

    internal static string SmallLettersDigitsAndHyphens => Words.Say();

    internal static string StageIsThereTwice(string stage) => Words.Say([stage]);

    internal static string NoSuchCaution(string caution, string keys) => Words.Say([caution, keys]);

    internal static string ReworkReturnsToNoEarlierStage(string back) => Words.Say([back]);

    internal static string WaitIsLongerThanTheWindow(int minimumMinutes, string afterStage, int maximumMinutes) =>
        Words.Say([minimumMinutes, afterStage, maximumMinutes]);

    internal static string MatchNamesNoSlotForAPart(string position) => Words.Say([position]);

    internal static string MatchComparesTwoOrMore => Words.Say();

    internal static string NoSuchMethod(string method, string names) => Words.Say([method, names]);

    internal static string MustBeListOfPairs(string what) => Words.Say([what]);

    internal static string HasAKeyThatIsNoText(string what) => Words.Say([what]);

    internal static string AText => Words.Say();
    internal static string AWholeNumber => Words.Say();

    internal static string NumberOfAtLeast(int atLeast) => Words.Say([atLeast]);

    internal static string ANumber => Words.Say();
    internal static string TrueOrFalse => Words.Say();
    internal static string ADate => Words.Say();
    internal static string AListOfTexts => Words.Say();

    internal static string HasNoSuchKey(string what, string key, string askeds) => Words.Say([what, key, askeds]);

    internal static string AList => Words.Say();

    internal static string IsMissing(string key) => Words.Say([key]);

    internal static string MustBe(string key, string expected) => Words.Say([key, expected]);

    internal static string AFinished(string? partKind) => Words.Say([partKind]);

    internal static string ALot(string lotKind) => Words.Say([lotKind]);

    internal static string NoLotOfTheKind(string kind, string known) => Words.Say([kind, known]);

    internal static string NoInstrumentOfTheKind(string kind, string known) => Words.Say([kind, known]);

    internal static string NoRouteMakesTheKind(string kind, string known) => Words.Say([kind, known]);

    internal static string FirstRouteOfTheKind(string kind, string known) => Words.Say([kind, known]);

    internal static string NoneYet => Words.Say();

    internal static string DidYouMean(string kind) => Words.Say([kind]);
}
