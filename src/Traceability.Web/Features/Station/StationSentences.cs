using Traceability.Domain.Values;

namespace Traceability.Web.Features.Station;

/// <summary>What builders are told by pages and programs alike. Their words are in <c>StationSentences.resx</c>.</summary>
internal static class StationSentences
{
    private static readonly TextFile Words = new(typeof(StationSentences));

    internal static string ReasonIsTooLong(int most) => Words.Say([most]);

    internal static string ThereIsNoAttempt(Guid attemptId) => Words.Say([attemptId]);

    internal static string SendOneOfTheseKinds => Words.Say();

    internal static string ThereIsNoReading(Guid readingId) => Words.Say([readingId]);

    internal static string NoFittingWasSent => Words.Say();

    internal static string ThereIsNoLoad(Guid loadId) => Words.Say([loadId]);

    internal static string NameThePartsToTakeOut => Words.Say();

    internal static string PartIsNotInThisLoad(string name) => Words.Say([name]);

    internal static string PartIsOutOfTheLoadAlready(string name) => Words.Say([name]);

    internal static string PartIsNamedTwice(string name) => Words.Say([name]);

    internal static string LoadIsClosedAlready => Words.Say();
    internal static string LogOfAClosedLoad => Words.Say();

    internal static string LoadHasSoManyParts(int mostParts, int count) => Words.Say([mostParts, count]);

    internal static string NoPartForTheLoad(string name) => Words.Say([name]);

    internal static string PartIsInTheLoadAlready(string name) => Words.Say([name]);

    internal static string EvidenceNeedsAMediaType(string inputName) => Words.Say([inputName]);

    internal static string NothingIsMatchedAt(string serial, string position) => Words.Say([serial, position]);

    internal static string AttemptHasNoFile(Guid id, Guid evidenceId) => Words.Say([id, evidenceId]);

    internal static string FilmLotIsReceivedElsewhere => Words.Say();
    internal static string ASerial => Words.Say();
    internal static string CarrierCode => Words.Say();

    internal static string CarrierIsRetired(string carrier, string reason) => Words.Say([carrier, reason]);

    internal static string ModelIsRetired(string model, string reason) => Words.Say([model, reason]);

    internal static string SerialIsTaken(string serial) => Words.Say([serial]);

    internal static string CarrierIsFull(string? carrier, string occupant) => Words.Say([carrier, occupant]);

    internal static string RouteIsNotInForceYet(string inputKind, string model, string first, string day) =>
        Words.Say([inputKind, model, first, day]);

    internal static string ThereIsNoRouteForKind(string inputKind, string model, string knowns) => Words.Say([inputKind, model, knowns]);

    internal static string NoReadingWasSent => Words.Say();

    internal static string NothingWasRecorded(string characteristic, string problem) => Words.Say([characteristic, problem]);

    internal static string AnotherAttemptIsOpenAt(string station, string opens, string named) => Words.Say([station, opens, named]);

    internal static string NoAttemptIsOpenAt(string station) => Words.Say([station]);

    internal static string SeveralAttemptsAreOpenAt(int openCount, string station, string serials) =>
        Words.Say([openCount, station, serials]);
}
