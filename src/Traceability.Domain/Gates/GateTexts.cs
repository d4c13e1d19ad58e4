using Traceability.Domain.Values;

namespace Traceability.Domain.Gates;

/// <summary>The reasons and remedies of the gates. Their words are in <c>GateTexts.resx</c>.</summary>
internal static class GateTexts
{
    private static readonly TextFile Words = new(typeof(GateTexts));

    internal static string AttemptsFailedSoFar(int failed, int allowed) => Words.Say([failed, allowed]);

    internal static string AllAttemptsFailed(int allowed) => Words.Say([allowed]);

    internal static string QualityLeadDecidesConcessionRegradeOrScrap => Words.Say();

    internal static string IsNotABuilder(string person) => Words.Say([person]);

    internal static string BuilderSignsIn => Words.Say();

    internal static string IsSignedIn(string person) => Words.Say([person]);

    internal static string IsQualifiedFor(string person, string needed) => Words.Say([person, needed]);

    internal static string IsNotQualifiedFor(string person, string needed) => Words.Say([person, needed]);

    internal static string QualifiedBuilderDoesIt => Words.Say();
    internal static string EveryEarlierStageIsPassed => Words.Say();

    internal static string NotPassedYet(string titles) => Words.Say([titles]);

    internal static string NextIs(string stage) => Words.Say([stage]);

    internal static string StillEmpty(string labels) => Words.Say([labels]);

    internal static string FitAs(string accepts, string label) => Words.Say([accepts, label]);

    internal static string HasNoPosition(string stage, string position, string positions) => Words.Say([stage, position, positions]);

    internal static string FitAnother => Words.Say();
    internal static string NothingToFit => Words.Say();

    internal static string Fits(string names) => Words.Say([names]);

    internal static string JoinedByAnd => Words.Say();

    internal static string WasNamedFor(string serial, string positions) => Words.Say([serial, positions]);

    internal static string PartIsWrongForThisSlot(string serial, string partKind, string accepts) => Words.Say([serial, partKind, accepts]);

    internal static string IsForAnotherModel(string serial, string model, string model2) => Words.Say([serial, model, model2]);

    internal static string CannotBeFittedInItself(string serial) => Words.Say([serial]);

    internal static string IsAlreadyFittedIn(string serial, string parent) => Words.Say([serial, parent]);

    internal static string IsInState(string serial, string state) => Words.Say([serial, state]);

    internal static string HasNotPassedItsOwnRouteYet(string serial) => Words.Say([serial]);

    internal static string WasNotFreeBefore(string serial, string since) => Words.Say([serial, since]);

    internal static string HoldsStopped(string serial, string subject, string reason) => Words.Say([serial, subject, reason]);

    internal static string LotIsWrongForThisSlot(string lot, string lotKind, string accepts) => Words.Say([lot, lotKind, accepts]);

    internal static string LotIsInQuarantine(string lot) => Words.Say([lot]);

    internal static string LotIsOnHold(string lot, string hold) => Words.Say([lot, hold]);

    internal static string LotExpiredOn(string lot, string expiresAt) => Words.Say([lot, expiresAt]);

    internal static string LotIsPastItsPotLife(string lot, int life, string life2) => Words.Say([lot, life, life2]);

    internal static string HasNo(string serial, string characteristic) => Words.Say([serial, characteristic]);

    internal static string AreOfDifferentFilmLots(string serials) => Words.Say([serials]);

    internal static string FitAMateOfTheSameFilmLot => Words.Say();

    internal static string DifferBy(string characteristic, string pair, decimal difference, decimal maximumDifference) =>
        Words.Say([characteristic, pair, difference, maximumDifference]);

    internal static string FitACloserMate => Words.Say();

    internal static string NoInstrumentOfKind(string missing) => Words.Say([missing]);

    internal static string ScanA(string missing) => Words.Say([missing]);

    internal static string NoInstrumentNeeded => Words.Say();

    internal static string InCalibration(string codes) => Words.Say([codes]);

    internal static string IsOnHold(string code, string reason) => Words.Say([code, reason]);

    internal static string UseAnotherOrTheQualityLeadLifts => Words.Say();

    internal static string WasNeverCalibrated(string code) => Words.Say([code]);

    internal static string UseAnotherOrRecordItsCalibration => Words.Say();

    internal static string WasFoundOutOfToleranceOn(string code, string calibratedOn) => Words.Say([code, calibratedOn]);

    internal static string UseAnotherOrHaveItRepaired => Words.Say();

    internal static string CalibrationRanOutOn(string code, string dueOn) => Words.Say([code, dueOn]);

    internal static string WasNotCheckedAgainstItsReferenceOn(string code, string day) => Words.Say([code, day]);

    internal static string CheckItAgainstItsReference => Words.Say();

    internal static string FailedItsCheckOn(string code, string day) => Words.Say([code, day]);

    internal static string UseAnotherOrFindOutWhy => Words.Say();
    internal static string EveryLotInsideItIsReleased => Words.Say();

    internal static string LotWithReason(string subject, string reason) => Words.Say([subject, reason]);

    internal static string InQuarantine(string quarantined) => Words.Say([quarantined]);

    internal static string QualityLeadReleasesTheLot => Words.Say();

    internal static string LastsAtLeastUntil(string stage, int minutes, string endsAt) => Words.Say([stage, minutes, endsAt]);

    internal static string CloseItAtOrLater(string endsAt) => Words.Say([endsAt]);

    internal static string NothingInsideItIsOnHold => Words.Say();

    internal static string OnHold(string held) => Words.Say([held]);

    internal static string QualityLeadLiftsTheHoldOrItIsTakenOut => Words.Say();

    internal static string OnThePart(string serial, string what) => Words.Say([serial, what]);

    internal static string OnInsideIt(string subject, string reason) => Words.Say([subject, reason]);

    internal static string NoNonconformityIsOpen => Words.Say();

    internal static string OpenNonconformity(string open) => Words.Say([open]);

    internal static string QualityLeadDecidesOnIt => Words.Say();
    internal static string NothingMeasuredIsInDoubt => Words.Say();

    internal static string MeasuredInDoubt(string named) => Words.Say([named]);

    internal static string WasMeasuredInDoubt(string serial, string stage, string instrument, string cause) =>
        Words.Say([serial, stage, instrument, cause]);

    internal static string CauseCalibration(string day) => Words.Say([day]);

    internal static string CauseCheck(string foundAt) => Words.Say([foundAt]);

    internal static string CauseHold(string foundAt) => Words.Say([foundAt]);

    internal static string AndMoreInDoubt(string named, int more) => Words.Say([named, more]);

    internal static string QualityLeadDecidesOnTheDoubt(string instrument) => Words.Say([instrument]);

    internal static string IsNotPassedYet => Words.Say();
    internal static string PassedAndMayBeRunAgain => Words.Say();

    internal static string WasPassedOn(string stage, string occurredAt) => Words.Say([stage, occurredAt]);

    internal static string PartIsFinished => Words.Say();

    internal static string IsOpenAtSince(string stage, string station, string occurredAt) => Words.Say([stage, station, occurredAt]);

    internal static string CloseOrAbandonThatAttemptFirst => Words.Say();
    internal static string NoAttemptIsOpen => Words.Say();

    internal static string WasScrapped(string part) => Words.Say([part]);

    internal static string NothingTakeAnotherPart => Words.Say();

    internal static string HasLeftTheWorkshop(string part) => Words.Say([part]);

    internal static string ServiceDeskOpensAReturn => Words.Say();

    internal static string IsFittedIn(string part, string parent) => Words.Say([part, parent]);

    internal static string TakeItOutFirst(string parent) => Words.Say([parent]);

    internal static string QualityLeadLiftsTheHold => Words.Say();

    internal static string IsInTheWorkshopAndFree(string part) => Words.Say([part]);

    internal static string DidNotDo(string person, string stages) => Words.Say([person, stages]);

    internal static string DidThemselves(string person, string stages) => Words.Say([person, stages]);

    internal static string AnotherPersonDoesThisStage => Words.Say();

    internal static string SignedInASecondTime(string person, string stages, string reason) => Words.Say([person, stages, reason]);

    internal static string SignInASecondTime => Words.Say();
    internal static string MeasureTheCapsuleFirst => Words.Say();
    internal static string QualityLeadDecidesOnTheTestVoltage => Words.Say();

    internal static string WaitAfterOverAt(int minutes, string after, string opensAt) => Words.Say([minutes, after, opensAt]);

    internal static string WaitAfterLogOverAt(int minutes, string after, string opensAt) => Words.Say([minutes, after, opensAt]);

    internal static string WaitUntil(string opensAt) => Words.Say([opensAt]);

    internal static string WithinTimeOfUntil(int minutes, string after, string closesAt) => Words.Say([minutes, after, closesAt]);

    internal static string WithinTimeOfLogUntil(int minutes, string after, string closesAt) => Words.Say([minutes, after, closesAt]);

    internal static string TooLate(string because) => Words.Say([because]);

    internal static string QualityLeadSendsItBackTo(string after) => Words.Say([after]);
}
