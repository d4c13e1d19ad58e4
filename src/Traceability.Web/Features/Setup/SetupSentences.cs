using Traceability.Domain.Values;

namespace Traceability.Web.Features.Setup;

/// <summary>What the set-up pages and programs are told alike. Their words are in <c>SetupSentences.resx</c>.</summary>
internal static class SetupSentences
{
    private static readonly TextFile Words = new(typeof(SetupSentences));

    internal static string FirstAccountWasMadeAlready => Words.Say();
    internal static string ThisLinkIsNotTheOne => Words.Say();
    internal static string TooManyAtOnce => Words.Say();
    internal static string InstrumentCode => Words.Say();

    internal static string ThereIsAnInstrumentAlready(string code) => Words.Say([code]);

    internal static string KindOfInstrumentIsSmallLetters => Words.Say();
    internal static string TitleHasToCharacters => Words.Say();
    internal static string DailyCheckNeedsMore => Words.Say();
    internal static string ToleranceIsAboveZero => Words.Say();
    internal static string SayWhenItWasCalibrated => Words.Say();
    internal static string CalibrationLiesInThePast => Words.Say();

    internal static string CalibrationIsDueTooFarAhead(int years, string latest) => Words.Say([years, latest]);

    internal static string CalibrationIsDueFarAhead(string due, int years) => Words.Say([due, years]);

    internal static string NameTheCalibrationCertificate => Words.Say();

    internal static string IsBelowZero(string wrong) => Words.Say([wrong]);

    internal static string IsNoConstantOfACalibration(string wrong, string keys) => Words.Say([wrong, keys]);

    internal static string GiveTheReadingOfTheReference => Words.Say();

    internal static string ThereIsNoInstrument(string code) => Words.Say([code]);

    internal static string FoundOutOfTolerance => Words.Say();

    internal static string ReadWhereAllowed(decimal? read, decimal? nominal, decimal? tolerance, string? unit, string consequence) =>
        Words.Say([read, nominal, tolerance, unit, consequence]);

    internal static string EverythingSinceIsInDoubt(string good) => Words.Say([good]);

    internal static string EverythingIsInDoubt => Words.Say();
    internal static string SayWhereTheTokenIsKept => Words.Say();
    internal static string SayWhyTheTokenIsRevoked => Words.Say();

    internal static string InstrumentHasNoToken(string code, Guid id) => Words.Say([code, id]);

    internal static string ThisTokenIsRevokedAlready => Words.Say();
    internal static string SayWhyThisWasDecided => Words.Say();

    internal static string ThereIsNoLot(string number) => Words.Say([number]);

    internal static string LotIsReleasedAlready(string code, string reason) => Words.Say([code, reason]);

    internal static string LotIsInQuarantineAlready(string code, string reason) => Words.Say([code, reason]);

    internal static string LotFailsOnItsCertificate(string lot, string stage, string findings) => Words.Say([lot, stage, findings]);

    internal static string JudgedOnTheSuppliersCertificate => Words.Say();
    internal static string PotLifeIsAWholeNumber => Words.Say();
    internal static string StateIsReleasedOrQuarantined => Words.Say();
    internal static string LotNumber => Words.Say();

    internal static string LotNumberIsTaken(string number) => Words.Say([number]);

    internal static string KindOfLotIsSmallLetters => Words.Say();
    internal static string NameTheSupplier => Words.Say();
    internal static string NameTheSuppliersLot => Words.Say();
    internal static string NameTheUnitOfTheQuantity => Words.Say();
    internal static string QuantityIsAboveZero => Words.Say();
    internal static string FilmLotNeedsFilm => Words.Say();
    internal static string FilmValuesAreAboveZero => Words.Say();
    internal static string ReceivedAtLiesInTheFuture => Words.Say();
    internal static string MixedAtAndPotLifeMinutesBelongTogether => Words.Say();
    internal static string PotLifeIsToMinutes => Words.Say();
    internal static string ABadge => Words.Say();

    internal static string BadgeBelongsToSomebody(string badge) => Words.Say([badge]);

    internal static string NameHasToCharacters => Words.Say();
    internal static string FirstPin => Words.Say();
    internal static string SayWhyACodeIsGiven => Words.Say();
    internal static string OwnPinIsChangedWithThePin => Words.Say();

    internal static string IsTheOnlyLead(string person) => Words.Say([person]);

    internal static string IsTheOnlyQualityLead(string person) => Words.Say([person]);

    internal static string QualificationHasToCharacters => Words.Say();

    internal static string NobodyHasTheBadge(string badge) => Words.Say([badge]);

    internal static string ThereIsNoRevision(int revision, string kind, string model) => Words.Say([revision, kind, model]);

    internal static string RouteFileHasTooManyCharacters => Words.Say();

    internal static string RouteCannotBeUsed(string problems) => Words.Say([problems]);

    internal static string AuthorAndApproverAreNamedByBadges(string stranger) => Words.Say([stranger]);

    internal static string AtLine(long line, string message) => Words.Say([line, message]);

    internal static string RouteNamesUnknownKinds(string lines) => Words.Say([lines]);

    internal static string RevisionIsNotTheNext(string model, string routeKind, int latest, int latest2, int revision) =>
        Words.Say([model, routeKind, latest, latest2, revision]);

    internal static string RouteIsNotInForceYet(string kind, string model, string first) => Words.Say([kind, model, first]);

    internal static string ThereIsNoRouteForKind(string kind, string model) => Words.Say([kind, model]);

    internal static string ChooseARouteFile => Words.Say();
    internal static string RouteFileHasTooManyBytes => Words.Say();
    internal static string RouteFileIsAText => Words.Say();
    internal static string MadeFromAnExample => Words.Say();
    internal static string ChooseADesign => Words.Say();
    internal static string ModelIsLettersDigitsAndHyphens => Words.Say();
    internal static string OneOrTwoLetters => Words.Say();
    internal static string ChooseAtLeastOneRoute => Words.Say();
    internal static string SayItToBegin => Words.Say();
    internal static string SayWhyTheLimitIsChanged => Words.Say();

    internal static string ModelHasRoutesAlready(string model, string kinds) => Words.Say([model, kinds]);

    internal static string AnotherRevisionWasProposed(int revision, string author, int mine) => Words.Say([revision, author, mine]);

    internal static string RouteHasProblems(int count) => Words.Say([count]);

    internal static string StationCode => Words.Say();
    internal static string CodeOfKindIsSmallLetters => Words.Say();

    internal static string PrefixIsUsedBy(string prefix, string routes) => Words.Say([prefix, routes]);

    internal static string ListsOfKinds(string lists) => Words.Say([lists]);

    internal static string KindIsListedAlready(string code, string title) => Words.Say([code, title]);

    internal static string KindIsRetired(string code, string reason) => Words.Say([code, reason]);

    internal static string DidYouMeanKind(string code, string near) => Words.Say([code, near]);

    internal static string KindIsNotListed(string code) => Words.Say([code]);

    internal static string SupplierLotCameBefore(string supplierLot, string number) => Words.Say([supplierLot, number]);

    internal static string SayWhyTheProofWasWrong => Words.Say();

    internal static string NoSuchCalibrationStands(string code, Guid id) => Words.Say([code, id]);

    internal static string NoSuchCheckStands(string code, Guid id) => Words.Say([code, id]);

    internal static string CodeEndsInANumber => Words.Say();

    internal static string CountOfCarriers(int most) => Words.Say([most]);

    internal static string SayWhyAccessIsChanged => Words.Say();
    internal static string NobodyDeactivatesThemself => Words.Say();

    internal static string PersonIsActiveAlready(string person) => Words.Say([person]);

    internal static string PersonIsDeactivatedAlready(string person, string reason) => Words.Say([person, reason]);

    internal static string ModelIsRetired(string model, string reason) => Words.Say([model, reason]);

    internal static string LotIsRetired(string number, string reason) => Words.Say([number, reason]);

    internal static string ThereIsAStationAlready(string code) => Words.Say([code]);

    internal static string LogoIsTooLarge => Words.Say();

    internal static string LogoHasTooManyPixels(string size, int most) => Words.Say([size, most]);

    internal static string LogoHoldsAScript(string what) => Words.Say([what]);

    internal static string LogoHoldsForeignContent(string what) => Words.Say([what]);

    internal static string LogoRefersElsewhere(string what) => Words.Say([what]);

    internal static string LogoDeclaresEntities => Words.Say();

    internal static string LogoHoldsWhatIsNotDrawn(string what) => Words.Say([what]);

    internal static string LogoIsEmpty => Words.Say();

    internal static string LogoIsNoPicture => Words.Say();

    internal static string WorkshopHasNoLogo => Words.Say();
    internal static string CarrierCode => Words.Say();
    internal static string KindOfCarrierIsSmallLetters => Words.Say();

    internal static string ThereIsACarrierAlready(string code) => Words.Say([code]);
}
