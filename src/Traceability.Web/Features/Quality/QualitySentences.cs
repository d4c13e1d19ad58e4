using Traceability.Domain.Values;

namespace Traceability.Web.Features.Quality;

/// <summary>What the quality desk is told by pages and programs alike. Their words are in <c>QualitySentences.resx</c>.</summary>
internal static class QualitySentences
{
    private static readonly TextFile Words = new(typeof(QualitySentences));

    internal static string PeriodEndsBeforeItBegins => Words.Say();

    internal static string ThereIsNoModel(string model) => Words.Say([model]);

    internal static string NoRouteHasAStage(string stage) => Words.Say([stage]);

    internal static string NeitherADayNorAMoment(string text) => Words.Say([text]);

    internal static string FromTo(double? lower, double? upper) => Words.Say([lower, upper]);

    internal static string BelowThousandth => Words.Say();

    internal static string StageHasNoCharacteristic(string? stage, string unknown) => Words.Say([stage, unknown]);

    internal static string ThesePartsHaveNoSuchFactor => Words.Say();
    internal static string ThisFactorHasNoSuchLevel => Words.Say();
    internal static string SayAtWhichStage => Words.Say();

    internal static string ThereIsNoPartOrCarrier(string serial) => Words.Say([serial]);

    internal static string CannotHaveABirthCertificate(string serial, string reasons) => Words.Say([serial, reasons]);

    internal static string ThereIsNoPart(string serial) => Words.Say([serial]);

    internal static string PublicAddressIsMissing => Words.Say();

    internal static string PublicAddressLeadsNowhere(string address) => Words.Say([address]);

    internal static string SetAddressLeadsNowhere(string address, string setting) => Words.Say([address, setting]);

    internal static string HasNoBirthCertificateYet(string serial) => Words.Say([serial]);

    internal static string HasNoBirthCertificateOfRevision(string serial, int? revision) => Words.Say([serial, revision]);

    internal static string ThereIsNoLot(string? lot) => Words.Say([lot]);

    internal static string SayWhichStage => Words.Say();
    internal static string SayWhichCharacteristic => Words.Say();
    internal static string WeekOrLoad => Words.Say();
    internal static string NotEnoughData => Words.Say();
    internal static string ThereAreNoLimitsToFit => Words.Say();
    internal static string LimitsLeaveNoRoom => Words.Say();

    internal static string JudgedByDifferentLimits(int pairs) => Words.Say([pairs]);

    internal static string WilsonOrClopperPearson => Words.Say();
    internal static string BuilderWeekOrNone => Words.Say();

    internal static string ThereIsNoFilmLot(string code) => Words.Say([code]);

    internal static string PeopleAreNamedByBadges(string stranger) => Words.Say([stranger]);

    internal static string NoReadingWasSent => Words.Say();

    internal static string ThereIsNoGaugeStudy(string number) => Words.Say([number]);

    internal static string ThereIsNoInstrument(string? instrument) => Words.Say([instrument]);

    internal static string SayWhyTheHoldIsLifted => Words.Say();

    internal static string ThereIsNoHold(Guid holdId) => Words.Say([holdId]);

    internal static string ThisHoldIsLiftedAlready => Words.Say();
    internal static string SayWhyItIsHeld => Words.Say();
    internal static string NameExactlyOneToHold => Words.Say();

    internal static string FilmLotIsHeldAsLot(string serial) => Words.Say([serial]);

    internal static string ThereIsNoPartOrLot(string serial) => Words.Say([serial]);

    internal static string ThereIsNoNonconformity(Guid nonconformityId) => Words.Say([nonconformityId]);

    internal static string ThereIsNoConcession(string number) => Words.Say([number]);

    internal static string AgeInMinutes(int age) => Words.Say([age]);

    internal static string AgeInHours(int age, int minutes) => Words.Say([age, minutes]);

    internal static string NoticeIsAcknowledgedAlready => Words.Say();
    internal static string ThereIsNoSuchNoticeNow => Words.Say();

    internal static string CustomerReferenceIsTooLong(int maxReference) => Words.Say([maxReference]);

    internal static string TooManyPartsAreTouched(int most) => Words.Say([most]);

    internal static string EverythingIsHeldAlready => Words.Say();

    internal static string WhatIsOneOf(string codes) => Words.Say([codes]);

    internal static string NameThePartsToDecideOn(int most) => Words.Say([most]);

    internal static string SayWhatToTrace => Words.Say();
    internal static string NoPartWasEverInACarrier => Words.Say();
    internal static string ThereIsNoStation => Words.Say();

    internal static string ThereIsNoLoad(string code) => Words.Say([code]);

    internal static string NobodyHasTheBadge(string code) => Words.Say([code]);

    internal static string NoLotHereIsCalled(string subjectCode) => Words.Say([subjectCode]);

    internal static string IsInDoubt(string code, string since, string until, string because) => Words.Say([code, since, until, because]);

    internal static string TheBeginning => Words.Say();
    internal static string Now => Words.Say();

    internal static string CalibrationFoundItOut(string day) => Words.Say([day]);

    internal static string ItFailedItsCheck(string foundAt) => Words.Say([foundAt]);

    internal static string ItWasStopped(string foundAt) => Words.Say([foundAt]);
}
