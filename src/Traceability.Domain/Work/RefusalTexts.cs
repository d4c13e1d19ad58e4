using Traceability.Domain.Evidence;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work;

/// <summary>Refusals of the commands, and the words of the facts that they write. Their words are in <c>RefusalTexts.resx</c>.</summary>
internal static partial class RefusalTexts
{
    private static readonly TextFile Words = new(typeof(RefusalTexts));

    internal static string ServerClockIsBehind(string now, string newest) => Words.Say([now, newest]);

    internal static string SayWhyTheAttemptIsAbandoned => Words.Say();

    internal static string AttemptAbandoned(string reason) => Words.Say([reason]);

    internal static string RevisionOf(int revision, string model, string revisionKind) => Words.Say([revision, model, revisionKind]);

    internal static string WasLoadedAsApproved(string name, string approvedBy) => Words.Say([name, approvedBy]);

    internal static string IsApprovedAlready(string name) => Words.Say([name]);

    internal static string WasRejectedAlready(string name, string reason) => Words.Say([name, reason]);

    internal static string WasWithdrawnAlready(string name, string reason) => Words.Say([name, reason]);

    internal static string AuthorWithdraws(string person, string name) => Words.Say([person, name]);

    internal static string OnlyItsAuthorWithdraws(string name, string author) => Words.Say([name, author]);

    internal static string SayWhyTheRouteIsNotUsed => Words.Say();

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
}
