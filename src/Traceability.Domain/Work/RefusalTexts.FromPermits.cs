namespace Traceability.Domain.Work;

/// <summary>The commands in the order of their names: here from permits on.</summary>
internal static partial class RefusalTexts
{
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

    internal static string InstrumentIsRetired(string code, string reason) => Words.Say([code, reason]);

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
