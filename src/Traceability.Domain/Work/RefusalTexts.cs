using Traceability.Domain.Evidence;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work;

/// <summary>Refusals of the commands, and the words of the facts that they write. Their words are in <c>RefusalTexts.resx</c>.</summary>
internal static class RefusalTexts
{
    private static readonly TextFile Words = new(typeof(RefusalTexts));

    internal static string ServerClockIsBehind(string now, string newest) => Words.Say([now, newest]);

    internal static string SayWhyTheAttemptIsAbandoned => Words.Say();

    internal static string AttemptAbandoned(string reason) => Words.Say([reason]);

    internal static string RevisionOf(int revision, string model, string revisionKind) => Words.Say([revision, model, revisionKind]);

    internal static string WasLoadedAsApproved(string name, string approvedBy) => Words.Say([name, approvedBy]);

    internal static string IsApprovedAlready(string name) => Words.Say([name]);

    internal static string SomebodyElseMustApprove(string person, string name) => Words.Say([person, name]);

    internal static string ComesBeforeAnApprovedRevision(string name, int latestApproved) => Words.Say([name, latestApproved]);

    internal static string SayWhyTheRouteMayBeUsed => Words.Say();

    internal static string FileIsKeptWithoutValue(FileProblem problem) => Words.Say([problem]);

    internal static string PhotosUnderAnyName => Words.Say();

    internal static string TakesNoSuchFile(string stage, string file, string list) => Words.Say([stage, file, list]);

    internal static string FileCannotBeUsed(string file, string kind, string problems) => Words.Say([file, kind, problems]);

    internal static string CannotEndBeforeItBegan(DateTimeOffset occurredAt, DateTimeOffset occurredAt2) =>
        Words.Say([occurredAt, occurredAt2]);

    internal static string NothingWasJudged(string unreadable) => Words.Say([unreadable]);

    internal static string StageFailed(string stage, string findings) => Words.Say([stage, findings]);

    internal static string StageIsConditional(string stage, string findings) => Words.Say([stage, findings]);

    internal static string IsOutside(string value, string? limits) => Words.Say([value, limits]);

    internal static string IsInsideButNotShownToConform(
        string value,
        string? limits,
        decimal? expandedUncertainty,
        string unit,
        double? probabilityOfConformance
    ) => Words.Say([value, limits, expandedUncertainty, unit, probabilityOfConformance]);

    internal static string FileOfKind(string name, string kind) => Words.Say([name, kind]);

    internal static string StillNeeds(string stage, string missing) => Words.Say([stage, missing]);

    internal static string HasNoReading(string serial, Guid readingId) => Words.Say([serial, readingId]);

    internal static string WasCorrectedFromTo(string characteristic, string serial, string digits, string numberDigits, string unit) =>
        Words.Say([characteristic, serial, digits, numberDigits, unit]);

    internal static string BoundShowsNothingOfUpperLimit(string digits, string characteristic) => Words.Say([digits, characteristic]);

    internal static string SayWhyTheReadingWasWrong => Words.Say();

    internal static string IsComputedCorrectItsReading(string characteristic) => Words.Say([characteristic]);

    internal static string AbandonedReadingsDoNotCount => Words.Say();

    internal static string OnlyTheQualityLeadMayCorrectNow(string serial) => Words.Say([serial]);

    internal static string HasNoNonconformity(string serial, Guid nonconformityId) => Words.Say([serial, nonconformityId]);

    internal static string OnlyAConcessionRestsOnAPermit => Words.Say();
    internal static string SayWhyThisWasDecided => Words.Say();
    internal static string NonconformityIsDecidedAlready => Words.Say();

    internal static string AttemptIsOpenAt(string serial, string station) => Words.Say([serial, station]);

    internal static string BuilderMayNotConcede(string person, string serial) => Words.Say([person, serial]);

    internal static string IsFittedInTakeItOutFirst(string serial, string parent) => Words.Say([serial, parent]);

    internal static string OnlyReworkAndRepairReturnToAStage => Words.Say();

    internal static string SayWhichStageItReturnsTo(string codes) => Words.Say([codes]);

    internal static string CannotReturnToALaterStage(string? returnTo, string? failed) => Words.Say([returnTo, failed]);

    internal static string NoAttemptLeftToDoAgain(string stage) => Words.Say([stage]);

    internal static string GateIsClosed(string stage, string reasons) => Words.Say([stage, reasons]);

    internal static string LoadWasNotClosed => Words.Say();
    internal static string LogWasNotKept => Words.Say();

    internal static string PositionIsFilled(string position, string serial) => Words.Say([position, serial]);

    internal static string HasNoPosition(string stage, string unknown, string positions) => Words.Say([stage, unknown, positions]);

    internal static string CouldNotBeComputedAnyMore(string stage, string serial, string unreadable) =>
        Words.Say([stage, serial, unreadable]);

    internal static string ComputedAnew(string method, int version, string cause) => Words.Say([method, version, cause]);

    internal static string FoundAfterCorrection(string stage, string cause, string found) => Words.Say([stage, cause, found]);

    internal static string CorrectionTurnedAPass(string stage, string cause, string verdict, string after) =>
        Words.Say([stage, cause, verdict, after]);

    internal static string SayWhyAllOfItIsLifted => Words.Say();
    internal static string EverythingIsLiftedAlready => Words.Say();
    internal static string GiveTheStudyATitle => Words.Say();
    internal static string SayWhatIsMeasured => Words.Say();
    internal static string SayWithWhichKindOfInstrument => Words.Say();
    internal static string EachPieceIsMeasuredToTimes => Words.Say();
    internal static string UpperLimitLiesAboveTheLower => Words.Say();

    internal static string StudyHasThePieces(string pieces) => Words.Say([pieces]);

    internal static string StudyHasThePeople(string people) => Words.Say([people]);

    internal static string StudyHasTheRepeatsTo(int repeats) => Words.Say([repeats]);

    internal static string StudyTakesMeasuredValuesNotBounds => Words.Say();

    internal static string StudyAsksForAnotherInstrument(string code, string instrumentKind, string studyInstrumentKind) =>
        Words.Say([code, instrumentKind, studyInstrumentKind]);

    internal static string StudyValueIsThereAlready(string piece, string person, int trial, string digits) =>
        Words.Say([piece, person, trial, digits]);

    internal static string StudyHasTwoToMost(int most) => Words.Say([most]);

    internal static string EachHasANameOfAtMost => Words.Say();
    internal static string EachIsNamedOnce => Words.Say();

    internal static string RouteHasNoStage(string serial, string stageCode, string codes) => Words.Say([serial, stageCode, codes]);

    internal static string NotForAllBecauseOfThese(string refused, string consequence) => Words.Say([refused, consequence]);

    internal static string PermitCoversAnotherCode(string number, string code, string nCode) => Words.Say([number, code, nCode]);

    internal static string PermitCoversAnotherStage(string number, string stage) => Words.Say([number, stage]);

    internal static string PermitCoversAnotherLot(string number, string? lot) => Words.Say([number, lot]);

    internal static string PermitRanOut(string number, string validUntil) => Words.Say([number, validUntil]);

    internal static string PermitIsUsedUp(string number, int? mostParts, int usedOnCount) => Words.Say([number, mostParts, usedOnCount]);

    internal static string AtMostOnePart => Words.Say();

    internal static string AtMostParts(int most) => Words.Say([most]);

    internal static string UntilDay(string last) => Words.Say([last]);

    internal static string SayWhyItMayBeUsedUnconforming => Words.Say();
    internal static string SayWhatItCovers => Words.Say();
    internal static string ConcessionHasALimit => Words.Say();
    internal static string NumberOfPartsOfAPermit => Words.Say();
    internal static string LastDayIsOverAlready => Words.Say();
    internal static string CodeOfNonconformityIsSmallLetters => Words.Say();
    internal static string SayWhatWasSeen => Words.Say();

    internal static string WasScrappedAlready(string serial) => Words.Say([serial]);

    internal static string IsA(string serial, string kind) => Words.Say([serial, kind]);

    internal static string CertificatesAreIssuedForFinishedUnits => Words.Say();
    internal static string EveryStageIsPassed => Words.Say();

    internal static string NotPassed(string unfinished) => Words.Say([unfinished]);

    internal static string NextIs(string unfinished) => Words.Say([unfinished]);

    internal static string ItWasScrapped => Words.Say();
    internal static string ItIsNotScrapped => Words.Say();
    internal static string NothingTakeAnotherUnit => Words.Say();

    internal static string OnHold(string reason) => Words.Say([reason]);

    internal static string LiftTheHold => Words.Say();
    internal static string ItIsNotOnHold => Words.Say();

    internal static string LeftTheWorkshopAtAlready(string serial, DateTimeOffset occurredAt) => Words.Say([serial, occurredAt]);

    internal static string MayNotBeShipped(string serial, string reasons) => Words.Say([serial, reasons]);

    internal static string HasNoPresentBirthCertificate(string serial) => Words.Say([serial]);

    internal static string SayWhyItComesOut => Words.Say();

    internal static string NothingIsFittedIn(string serial) => Words.Say([serial]);

    internal static string NothingIsFittedAt(string serial, string position, string filled) => Words.Say([serial, position, filled]);

    internal static string IsInState(string serial, string state) => Words.Say([serial, state]);

    internal static string OpenStageBuildsOnIt(string? title, string serial, string position) => Words.Say([title, serial, position]);

    internal static string SayWhatTheCustomerComplainsOf => Words.Say();

    internal static string CustomerReferenceIsTooLong(int maxReference) => Words.Say([maxReference]);

    internal static string OnlyWhatWasShippedComesBack(string serial, string state) => Words.Say([serial, state]);

    internal static string CannotComeBackBeforeShipped(DateTimeOffset occurredAt, DateTimeOffset shippedOccurredAt) =>
        Words.Say([occurredAt, shippedOccurredAt]);

    internal static string CodeOfFaultIsSmallLetters => Words.Say();
    internal static string SayWhatWasFound => Words.Say();
    internal static string SayWhatWasDone => Words.Say();
    internal static string SayWhyItCameOutSo => Words.Say();

    internal static string WasScrappedAndComesOutSo(string serial) => Words.Say([serial]);

    internal static string IsNotScrappedYet(string serial) => Words.Say([serial]);

    internal static string ReturnIsNotClosedYet(string serial, string reasons) => Words.Say([serial, reasons]);

    internal static string SomethingWasFound(int findings) => Words.Say([findings]);

    internal static string NothingWasFoundYet => Words.Say();
    internal static string RecordWhatWasFound => Words.Say();

    internal static string ItCameOutAs(string outcome, string reason) => Words.Say([outcome, reason]);

    internal static string NobodySaidHowItCameOut => Words.Say();
    internal static string ServiceDeskSaysHowItCameOut => Words.Say();

    internal static string HasNoCertificateSinceItCameBack(string serial) => Words.Say([serial]);

    internal static string ItsReturnIsOpen => Words.Say();
    internal static string ServiceDeskClosesTheReturn => Words.Say();
    internal static string WasTestedSinceItCameBack => Words.Say();
    internal static string WasRepairedAndNotTested => Words.Say();
    internal static string ReworkOpensTheStagesAgain => Words.Say();
    internal static string NothingWasDecided => Words.Say();

    internal static string NothingOnItIsInDoubt(string instrument) => Words.Say([instrument]);

    internal static string DecideOnWhatIsInside(string serials, string instrument) => Words.Say([serials, instrument]);

    internal static string BuilderMayNotAccept(string person, string serial) => Words.Say([person, serial]);

    internal static string LotIsHeldAsALot(string serial) => Words.Say([serial]);

    internal static string HasNoReturn(string serial, Guid returnId) => Words.Say([serial, returnId]);

    internal static string ReturnWasClosed(DateTimeOffset occurredAt, string action) => Words.Say([occurredAt, action]);

    internal static string InstrumentIsNotNamed(string code) => Words.Say([code]);

    internal static string InstrumentIsOnHold(string code, string reasons) => Words.Say([code, reasons]);

    internal static string InstrumentWasOutOfTolerance(string code) => Words.Say([code]);

    internal static string InstrumentIsDue(string code) => Words.Say([code]);

    internal static string IsDonePartByPart(string stage) => Words.Say([stage]);

    internal static string LoadWasNotStarted => Words.Say();

    internal static string IsThereMoreThanOnce(string key, int twice) => Words.Say([key, twice]);

    internal static string HasNoCharacteristic(string stage, string characteristic, string names) =>
        Words.Say([stage, characteristic, names]);

    internal static string IsComputedNotEntered(string characteristic) => Words.Say([characteristic]);

    internal static string BoundShowsNothingOfAtMost(string digits, string name, decimal? upper, string unit) =>
        Words.Say([digits, name, upper, unit]);

    internal static string WasReadAlready(string characteristic, string serial, string digits, Guid id) =>
        Words.Say([characteristic, serial, digits, id]);

    internal static string OccurredInTheFuture(DateTimeOffset moment, DateTimeOffset now) => Words.Say([moment, now]);

    internal static string VoltageIsNotTaken(string label, string because) => Words.Say([label, because]);

    internal static string RecordNeedsOpenedAt(string stage) => Words.Say([stage]);

    internal static string OnlyALogHasOpenedAt(string stage) => Words.Say([stage]);

    internal static string OpenedAfterItsEnd(string stage, DateTimeOffset openedAt, DateTimeOffset endedAt) =>
        Words.Say([stage, openedAt, endedAt]);

    internal static string OccurredBeforeAnyRecord(DateTimeOffset moment, DateTimeOffset earliest) => Words.Say([moment, earliest]);

    internal static string OccurredInThePast(DateTimeOffset moment) => Words.Say([moment]);

    internal static string OccurredBeforeItBegan(DateTimeOffset moment, DateTimeOffset began) => Words.Say([moment, began]);

    internal static string StageAsksForOtherInstruments(string stage, string serial, string code, string kind, string kinds) =>
        Words.Say([stage, serial, code, kind, kinds]);

    internal static string StageAsksForNoInstrument(string stage, string serial, string code) => Words.Say([stage, serial, code]);

    internal static string OccurredBeforeTheLastEvent(DateTimeOffset occurredAt, string serial, DateTimeOffset last) =>
        Words.Say([occurredAt, serial, last]);

    internal static string HasNoAttempt(string serial, Guid attemptId) => Words.Say([serial, attemptId]);

    internal static string AttemptWasAbandoned(string? note) => Words.Say([note]);

    internal static string AttemptWasClosed(DateTimeOffset occurredAt, string verdict) => Words.Say([occurredAt, verdict]);

    internal static string RouteHasNoStageAnyMore(string serial, string stage) => Words.Say([serial, stage]);
}
