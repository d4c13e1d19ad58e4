using Traceability.Domain.Values;

namespace Traceability.Web.Features.Parts;

/// <summary>
/// What is said of parts to everybody: their history, what is missing, what was not found. Their words are in <c>PartsSentences.resx</c>.
/// </summary>
internal static class PartsSentences
{
    private static readonly TextFile Words = new(typeof(PartsSentences));

    internal static string FinishedForACertificate => Words.Say();
    internal static string FinishedReadyToBeFitted => Words.Say();

    internal static string ThereIsNoStation(string station) => Words.Say([station]);

    internal static string StationIsRetired(string station, string reason) => Words.Say([station, reason]);

    internal static string ThereIsNoInstrument(string unknown) => Words.Say([unknown]);

    internal static string PositionIsNamedTwice(string position) => Words.Say([position]);

    internal static string PositionTakesEitherChildOrLot(string position) => Words.Say([position]);

    internal static string NoPartToFit(string serial) => Words.Say([serial]);

    internal static string QuantityIsAboveZero => Words.Say();

    internal static string NoLotToFit(string lot) => Words.Say([lot]);

    internal static string RegisteredAs(string kind, string model, int revision) => Words.Say([kind, model, revision]);

    internal static string LaidIntoCarrier(string carrierCode) => Words.Say([carrierCode]);

    internal static string LeftCarrier(string carrierCode) => Words.Say([carrierCode]);

    internal static string Decided(string decision) => Words.Say([decision]);

    internal static string PutOnHold(string reason) => Words.Say([reason]);

    internal static string HoldLifted(string reason) => Words.Say([reason]);

    internal static string BirthCertificateIssuedRevision(int revision) => Words.Say([revision]);

    internal static string ShippedReference(string customerReference) => Words.Say([customerReference]);

    internal static string CameBack(string complaint) => Words.Say([complaint]);

    internal static string FoundDescription(string description) => Words.Say([description]);

    internal static string SignedInASecondTime(string what, string reason) => Words.Say([what, reason]);

    internal static string ConcessionOnOwnWork => Words.Say();
    internal static string DoubtOnOwnWork => Words.Say();

    internal static string StageAfterOwnWork(string stage) => Words.Say([stage]);

    internal static string DoubtDecided(string decision, string reason) => Words.Say([decision, reason]);

    internal static string ReturnCameOut(string outcome, string reason) => Words.Say([outcome, reason]);

    internal static string ReturnClosed(string action) => Words.Say([action]);

    internal static string ReceivedFromTheirLot(string supplier, string supplierLot) => Words.Say([supplier, supplierLot]);

    internal static string ReleasedReason(string reason) => Words.Say([reason]);

    internal static string PutInQuarantine(string reason) => Words.Say([reason]);

    internal static string AttemptBegun(string stage, int number, string station) => Words.Say([stage, number, station]);

    internal static string WithInstrument(string instrumentKind, string code) => Words.Say([instrumentKind, code]);

    internal static string OutsideItsLimits(string characteristic, string digits, string unit) => Words.Say([characteristic, digits, unit]);

    internal static string CorrectedTo(string characteristic, string digits, string unit, string reason) =>
        Words.Say([characteristic, digits, unit, reason]);

    internal static string KeptBytes(string name, string kind, long lengthBytes) => Words.Say([name, kind, lengthBytes]);

    internal static string TakenOutOf(string other, string position, string reason) => Words.Say([other, position, reason]);

    internal static string TakenOutOfOtherReason(string other, string reason) => Words.Say([other, reason]);

    internal static string FittedAs(string other, string position) => Words.Say([other, position]);

    internal static string FittedIntoAs(string other, string position) => Words.Say([other, position]);

    internal static string StageAbandoned(string stage, string? note) => Words.Say([stage, note]);

    internal static string StagePassed(string stage) => Words.Say([stage]);

    internal static string StageConditional(string stage, string findings) => Words.Say([stage, findings]);

    internal static string StageFailed(string stage, string findings) => Words.Say([stage, findings]);

    internal static string BackTo(string returnTo) => Words.Say([returnTo]);

    internal static string LimitedTo(string limitedTo) => Words.Say([limitedTo]);

    internal static string ThereIsNoStateStates(string state, string states) => Words.Say([state, states]);

    internal static string ThereIsNoPartOrCarrier(string serial) => Words.Say([serial]);
}
