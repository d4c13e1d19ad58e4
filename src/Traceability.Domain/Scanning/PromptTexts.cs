using Traceability.Domain.Values;

namespace Traceability.Domain.Scanning;

/// <summary>What the station says. Their words are in <c>PromptTexts.resx</c>.</summary>
internal static class PromptTexts
{
    private static readonly TextFile Words = new(typeof(PromptTexts));

    internal static string AKind(string kind) => Words.Say([kind]);

    internal static string TakesNothing => Words.Say();
    internal static string JudgedByNothing => Words.Say();

    internal static string IsNoEmptySlotHere(string position) => Words.Say([position]);

    internal static string ToTurnToItScanClearFirst(string serial) => Words.Say([serial]);

    internal static string LookingAt(string serial) => Words.Say([serial]);

    internal static string IsCollectedAlreadyInAll(string serial, int count) => Words.Say([serial, count]);

    internal static string PartsAreEnoughForOneRun(int most) => Words.Say([most]);

    internal static string ScanThePartFirst => Words.Say();

    internal static string TheLot(string lot) => Words.Say([lot]);

    internal static string LotOfKind(string lotKind) => Words.Say([lotKind]);

    internal static string NoEmptySlotHereTakes(string what) => Words.Say([what]);

    internal static string SlotTakesSomethingElse(string label, string takes, string what) => Words.Say([label, takes, what]);

    internal static string NoSlotIsEmpty => Words.Say();

    internal static string EmptySlots(string slots) => Words.Say([slots]);

    internal static string InstrumentsAreNamedWhenAStageStarts => Words.Say();
    internal static string AbandonAndStartAgain => Words.Say();
    internal static string NumberBelongsToAPart => Words.Say();
    internal static string NoValueIsMissingHere => Words.Say();

    internal static string OrCorrectAValue(string next) => Words.Say([next]);

    internal static string InsideLimits(string limits) => Words.Say([limits]);

    internal static string InsideButTooNearToTheLimit(string limits) => Words.Say([limits]);

    internal static string OutsideLimits(string limits) => Words.Say([limits]);

    internal static string ACode => Words.Say();
    internal static string NeitherACodeNorANumber => Words.Say();
    internal static string StageIsNotStartedScanStart => Words.Say();
    internal static string LookingItUp => Words.Say();
    internal static string ScanYourBadge => Words.Say();
    internal static string ScanAPartItsJig => Words.Say();
    internal static string ScanTheStationYouAreAt => Words.Say();
    internal static string JoinedByAnd => Words.Say();

    internal static string ScanMissing(string missing) => Words.Say([missing]);

    internal static string ScanStartOrMorePartsFor => Words.Say();
    internal static string ScanStart => Words.Say();

    internal static string PartAtStageOnceMore(string part, string stage) => Words.Say([part, stage]);

    internal static string PartAtStageMayRunAgain(string part, string stage, string stage2) => Words.Say([part, stage, stage2]);

    internal static string Collected(int count) => Words.Say([count]);

    internal static string SendTheFile(string evidence) => Words.Say([evidence]);

    internal static string NothingIsMissingScanDone => Words.Say();

    internal static string NothingIsMissingButTime(string until, string close) => Words.Say([until, close]);

    internal static string CorrectItOrCloseIt(string label, string close) => Words.Say([label, close]);

    internal static string AlsoPossible(string closing, string label, string limits) => Words.Say([closing, label, limits]);

    internal static string ScanStartOrTheNextPart => Words.Say();
    internal static string WindowShowedSomethingOlder => Words.Say();

    internal static string WhereAndNext(string where, string next) => Words.Say([where, next]);

    internal static string NowItIs(string next) => Words.Say([next]);

    internal static string NothingWasCorrectedItEnded => Words.Say();
    internal static string NothingWasAbandonedItEnded => Words.Say();
    internal static string CodeOrNumberIsNoReason => Words.Say();

    internal static string KeptAndNext(string kept, string next) => Words.Say([kept, next]);

    internal static string NothingIsMissingInTheLoad => Words.Say();

    internal static string ScanForSlot(string label, string takes) => Words.Say([label, takes]);

    internal static string TypeTheValueIn(string label, string symbol, string limits) => Words.Say([label, symbol, limits]);

    internal static string TypeTheValue(string label, string limits) => Words.Say([label, limits]);

    internal static string AnKind(string kind) => Words.Say([kind]);

    internal static string FromTo(decimal lower, decimal upper, string symbol) => Words.Say([lower, upper, symbol]);

    internal static string AtLeast(decimal lower, string symbol) => Words.Say([lower, symbol]);

    internal static string AtMost(decimal upper, string symbol) => Words.Say([upper, symbol]);

    internal static string NoLimits => Words.Say();
    internal static string MistypedAtTheStation => Words.Say();
    internal static string WaysWhileCorrecting => Words.Say();
    internal static string NoValueWasTakenHereYet => Words.Say();
    internal static string NothingIsStartedHere => Words.Say();
    internal static string ValuesOfAStageThatIsOver => Words.Say();

    internal static string TypeWhatItShouldBe(string label, string digits, string limits) => Words.Say([label, digits, limits]);

    internal static string TypeInWordsWhyItIsCorrected(string label, string digits, string takenDigits) =>
        Words.Say([label, digits, takenDigits]);

    internal static string BothValuesStayInTheHistory => Words.Say();

    internal static string CountsNow(string label, string digits) => Words.Say([label, digits]);

    internal static string BeforeThat(string digits, string reason) => Words.Say([digits, reason]);

    internal static string NeitherANumberNorAValue(string label) => Words.Say([label]);

    internal static string TakenSoFar(string names, string ways) => Words.Say([names, ways]);

    internal static string GoOnAsBefore => Words.Say();
    internal static string TypeYourPinOrScanNo => Words.Say();
    internal static string PinComesFirst => Words.Say();
    internal static string CheckingThePin => Words.Say();
    internal static string TypeYourPin => Words.Say();

    internal static string TheBadge(string badge) => Words.Say([badge]);

    internal static string GivingTheAttemptUp => Words.Say();
    internal static string TypeInWordsWhyTheAttempt => Words.Say();

    internal static string TheStation(string station) => Words.Say([station]);

    internal static string ScanYourBadgeThenTypeYourPin => Words.Say();
    internal static string WhatComesAfterTheBadge => Words.Say();
    internal static string ScanYourBadgeFirst => Words.Say();
    internal static string CodeWasMisread => Words.Say();

    internal static string CodeShouldEndIn(string kind, string id, char expected, char found) => Words.Say([kind, id, expected, found]);

    internal static string TypeThePinAgainOrScanNo => Words.Say();

    internal static string IsNotKnownHere(string text) => Words.Say([text]);

    internal static string CheckTheLabelOrRegisterItFirst => Words.Say();
    internal static string AttemptIsAbandoned => Words.Say();

    internal static string WasPutAsideScanAnother(string code) => Words.Say([code]);

    internal static string ScanTheStationYouAreAtThen => Words.Say();

    internal static string SignedIn(string person, string? detail) => Words.Say([person, detail]);

    internal static string RunIsStartedForOnePart => Words.Say();

    internal static string RunIsStartedForParts(int count) => Words.Say([count]);

    internal static string ScanTheNextPart => Words.Say();

    internal static string WasPutAsideCollected(string serial, int count, string serials) => Words.Say([serial, count, serials]);

    internal static string MistypedIsTheReasonForACorrection => Words.Say();
    internal static string NothingIsUndoneFactsAreNeverDeleted => Words.Say();
    internal static string WhatCorrectsWhat => Words.Say();
    internal static string ScanAPartFirst => Words.Say();

    internal static string LookingAtThenScanStartAgain(string part) => Words.Say([part]);

    internal static string ItIsStartedAlready => Words.Say();

    internal static string IsDonePartByPart(string stage) => Words.Say([stage]);

    internal static string StartingForParts(string stage, int count) => Words.Say([stage, count]);

    internal static string StartingOn(string stage, string part) => Words.Say([stage, part]);

    internal static string LookingAtThenScanAgainAgain(string part) => Words.Say([part]);

    internal static string RunOnceMore(string stage) => Words.Say([stage]);

    internal static string HasNoStageToRunAgain(string part) => Words.Say([part]);

    internal static string WhenAStageMayBeRunAgain => Words.Say();
    internal static string NothingIsStartedToClose => Words.Say();
    internal static string ThisPartIsInNoLoadScan => Words.Say();

    internal static string NotYet(string next) => Words.Say([next]);

    internal static string StillMissing(string missing) => Words.Say([missing]);

    internal static string ClosingTheRunForAllItsParts => Words.Say();
    internal static string ClosingAndJudging => Words.Say();
    internal static string NothingIsStartedToAbandon => Words.Say();
    internal static string NoSlotIsEmptyHere => Words.Say();
    internal static string BenchIsClear => Words.Say();
    internal static string InstrumentsArePutAsideToo => Words.Say();

    internal static string PutAside(string aside) => Words.Say([aside]);

    internal static string PutAsideWhatWasStartedStaysOpen(string aside) => Words.Say([aside]);

    internal static string SignedOutScanABadge => Words.Say();

    internal static string CollectedPartsStayOnTheBench(int count) => Words.Say([count]);

    internal static string HelpAtAnEmptyBench => Words.Say();
    internal static string HelpBeforeTheStart => Words.Say();
    internal static string HelpInAnAttempt => Words.Say();
}
