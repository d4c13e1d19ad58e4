using Traceability.Domain.Certificates;
using Traceability.Domain.Quality.Reports;
using Traceability.Web.Features.Parts.History;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Public.Verify;
using Traceability.Web.Features.Quality.Causes;
using Traceability.Web.Features.Quality.Certificates;
using Traceability.Web.Features.Quality.Concessions;
using Traceability.Web.Features.Quality.ControlCharts;
using Traceability.Web.Features.Quality.FilmLots;
using Traceability.Web.Features.Quality.GaugeStudies;
using Traceability.Web.Features.Quality.Holds;
using Traceability.Web.Features.Quality.Ledger;
using Traceability.Web.Features.Quality.Nonconformities;
using Traceability.Web.Features.Quality.Notices;
using Traceability.Web.Features.Quality.Shipments;
using Traceability.Web.Features.Quality.Trace;
using Traceability.Web.Features.Quality.WhereUsed;
using Traceability.Web.Features.Quality.Yields;
using Traceability.Web.Features.Service.Returns;
using Traceability.Web.Features.Service.Search;
using Traceability.Web.Features.Setup.Instruments;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Features.Setup.Routes;
using Traceability.Web.Features.Station.Loads;
using Traceability.Web.Features.Station.ScanBox;
using Traceability.Web.Features.Station.StageWork;

namespace Traceability.Web.Http;

/// <summary>The shape of every good answer that is JSON; handlers return results, from which nothing can be read off.</summary>
internal static class ApiAnswers
{
    private const int Read = 200,
        Done = 200,
        Made = 201;

    private static readonly Dictionary<string, (int Status, Type Type)> Shapes = new()
    {
        ["POST /api/v1/sessions"] = (Read, typeof(Features.Access.SignIn.Output)),
        ["POST /api/v1/pins"] = (Done, typeof(Features.Access.SetPin.Output)),
        ["POST /api/v1/first-account"] = (Made, typeof(PersonAnswer)),
        ["GET /api/v1/parts"] = (Read, typeof(Page<PartAnswer>)),
        ["POST /api/v1/parts"] = (Made, typeof(PartAnswer)),
        ["GET /api/v1/parts/{serial}"] = (Read, typeof(PartAnswer)),
        ["GET /api/v1/parts/{serial}/gates"] = (Read, typeof(Page<GateAnswer>)),
        ["GET /api/v1/parts/{serial}/history"] = (Read, typeof(PartHistory.Output)),
        ["GET /api/v1/parts/{serial}/made-of"] = (Read, typeof(Features.Parts.Structure.ReadMadeOf.Output)),
        ["GET /api/v1/parts/{serial}/mates"] = (Read, typeof(Features.Station.Mates.FindMates.Output)),
        ["POST /api/v1/parts/{serial}/attempts"] = (Made, typeof(OpenAttempt.Output)),
        ["POST /api/v1/parts/{serial}/records"] = (Made, typeof(ClosingAnswer)),
        ["POST /api/v1/parts/{serial}/removals"] = (Made, typeof(RemoveFitting.Output)),
        ["POST /api/v1/parts/{serial}/nonconformities"] = (Made, typeof(RaiseNonconformity.Output)),
        ["GET /api/v1/parts/{serial}/certificates"] = (Read, typeof(Page<ReadCertificates.Issued>)),
        ["POST /api/v1/parts/{serial}/certificates"] = (Made, typeof(IssueCertificate.Output)),
        ["GET /api/v1/parts/{serial}/certificates/{revision}.json"] = (Read, typeof(CertificateDocument)),
        ["POST /api/v1/parts/{serial}/shipments"] = (Made, typeof(ShipUnit.Output)),
        ["GET /api/v1/attempts/{id}"] = (Read, typeof(ReadAttempt.Output)),
        ["POST /api/v1/attempts/{id}/readings"] = (Made, typeof(TakeReadings.Output)),
        ["POST /api/v1/attempts/{id}/fittings"] = (Made, typeof(FitInputs.Output)),
        ["POST /api/v1/attempts/{id}/evidence"] = (Made, typeof(AttachEvidence.Output)),
        ["POST /api/v1/attempts/{id}/close"] = (Done, typeof(ClosingAnswer)),
        ["POST /api/v1/attempts/{id}/abandon"] = (Done, typeof(PartAnswer)),
        ["POST /api/v1/stations/{code}/readings"] = (Made, typeof(TakeReadings.Output)),
        ["GET /api/v1/stations"] = (Read, typeof(Page<Features.Setup.Stations.AddStation.StationAnswer>)),
        ["POST /api/v1/stations"] = (Made, typeof(Features.Setup.Stations.AddStation.StationAnswer)),
        ["POST /api/v1/loads"] = (Made, typeof(OpenLoad.Output)),
        ["GET /api/v1/loads/{id}"] = (Read, typeof(ReadLoad.Output)),
        ["POST /api/v1/loads/{id}/log"] = (Made, typeof(AttachEvidence.Output)),
        ["POST /api/v1/loads/{id}/close"] = (Done, typeof(CloseLoad.Output)),
        ["POST /api/v1/readings/{id}/corrections"] = (Made, typeof(CorrectReading.Output)),
        ["GET /api/v1/nonconformities"] = (Read, typeof(Page<NonconformityRow>)),
        ["POST /api/v1/nonconformities/{id}/disposition"] = (Made, typeof(DecideOnNonconformity.Output)),
        ["GET /api/v1/holds"] = (Read, typeof(Page<HoldAnswer>)),
        ["POST /api/v1/holds"] = (Made, typeof(HoldAnswer)),
        ["POST /api/v1/holds/{id}/release"] = (Made, typeof(HoldAnswer)),
        ["GET /api/v1/lots"] = (Read, typeof(Page<LotAnswer>)),
        ["POST /api/v1/lots"] = (Made, typeof(LotAnswer)),
        ["GET /api/v1/lots/{number}"] = (Read, typeof(LotAnswer)),
        ["POST /api/v1/lots/{number}/release"] = (Done, typeof(LotAnswer)),
        ["POST /api/v1/lots/{number}/quarantine"] = (Done, typeof(LotAnswer)),
        ["GET /api/v1/lots/{number}/where-used"] = (Read, typeof(Page<UseOfLot>)),
        ["GET /api/v1/instruments"] = (Read, typeof(Page<ListInstruments.InstrumentAnswer>)),
        ["POST /api/v1/instruments/{code}/calibrations"] = (Made, typeof(ProveInstrument.Output)),
        ["POST /api/v1/instruments/{code}/checks"] = (Made, typeof(ProveInstrument.Output)),
        ["GET /api/v1/instruments/{code}/tokens"] = (Read, typeof(Page<Features.Setup.InstrumentTokens.IssueToken.Row>)),
        ["POST /api/v1/instruments/{code}/tokens"] = (Made, typeof(Features.Setup.InstrumentTokens.IssueToken.Made)),
        ["GET /api/v1/instruments/{code}/affected"] = (Read, typeof(TraceParts.Output)),
        ["POST /api/v1/instruments/{code}/affected/decisions"] = (Made, typeof(Features.Quality.Doubts.DecideOnDoubts.Output)),
        ["GET /api/v1/ledger/{serial}"] = (Read, typeof(Page<ReadLedger.Entry>)),
        ["GET /api/v1/people"] = (Read, typeof(Page<PersonAnswer>)),
        ["POST /api/v1/people"] = (Made, typeof(AddPerson.Output)),
        ["POST /api/v1/people/{badge}/pin-code"] = (Made, typeof(GivePinCode.Output)),
        ["POST /api/v1/people/{badge}/roles"] = (Done, typeof(PersonAnswer)),
        ["POST /api/v1/people/{badge}/qualifications"] = (Done, typeof(PersonAnswer)),
        ["GET /api/v1/routes"] = (Read, typeof(Page<ReadRoutes.RouteAnswer>)),
        ["GET /api/v1/routes/{model}/{kind}"] = (Read, typeof(ReadRoutes.RouteAnswer)),
        ["GET /api/v1/routes/revisions"] = (Read, typeof(Page<RevisionRow>)),
        ["GET /api/v1/routes/{model}/{kind}/comparison"] = (Read, typeof(CompareRevisions.Output)),
        ["POST /api/v1/routes/{model}/{kind}/{revision}/approval"] = (Made, typeof(ApproveRevision.Output)),
        ["POST /api/v1/routes"] = (Made, typeof(LoadRoute.Output)),
        ["GET /api/v1/search"] = (Read, typeof(Page<Found>)),
        ["GET /api/v1/returns"] = (Read, typeof(Page<ReturnRow>)),
        ["GET /api/v1/returns/{id}"] = (Read, typeof(ReturnRow)),
        ["POST /api/v1/returns"] = (Made, typeof(TakeBack.Output)),
        ["POST /api/v1/returns/{id}/findings"] = (Made, typeof(TakeBack.Output)),
        ["POST /api/v1/returns/{id}/outcome"] = (Made, typeof(TakeBack.Output)),
        ["POST /api/v1/returns/{id}/close"] = (Made, typeof(TakeBack.Output)),
        ["GET /api/v1/quality/film-lots"] = (Read, typeof(FilmLotAnswer)),
        ["GET /api/v1/quality/film-lots/{number}/parts"] = (Read, typeof(Page<FilmLotPart>)),
        ["GET /api/v1/quality/causes"] = (Read, typeof(CauseAnswer)),
        ["GET /api/v1/quality/causes/parts"] = (Read, typeof(Page<CausePart>)),
        ["GET /api/v1/quality/control-chart"] = (Read, typeof(ControlChartAnswer)),
        ["GET /api/v1/quality/pareto"] = (Read, typeof(ParetoAnswer)),
        ["GET /api/v1/quality/yield"] = (Read, typeof(YieldAnswer)),
        ["GET /api/v1/quality/trace"] = (Read, typeof(TraceParts.Output)),
        ["GET /api/v1/quality/trace/holds"] = (Read, typeof(Page<TracedHold>)),
        ["GET /api/v1/quality/trace/holds/{id}"] = (Read, typeof(TracedHold)),
        ["POST /api/v1/quality/trace/holds"] = (Made, typeof(Features.Quality.Trace.HoldTraced.Output)),
        ["POST /api/v1/quality/trace/holds/{id}/release"] = (Made, typeof(LiftTracedHold.Output)),
        ["GET /api/v1/quality/concessions"] = (Read, typeof(Page<ConcessionRow>)),
        ["POST /api/v1/quality/concessions"] = (Made, typeof(ConcessionRow)),
        ["GET /api/v1/quality/gauge-studies"] = (Read, typeof(Page<StudyRow>)),
        ["GET /api/v1/quality/gauge-studies/{number}"] = (Read, typeof(StudyAnswer)),
        ["POST /api/v1/quality/gauge-studies"] = (Made, typeof(StudyRow)),
        ["POST /api/v1/quality/gauge-studies/{number}/readings"] = (Made, typeof(StudyRow)),
        ["GET /api/v1/quality/notices"] = (Read, typeof(NoticesAnswer)),
        ["POST /api/v1/quality/notices/{key}/acknowledge"] = (Made, typeof(AcknowledgementRow)),
        ["GET /api/v1/quality/monthly-report.json"] = (Read, typeof(MonthlyReportDocument)),
        ["GET /api/v1/verify/{certificateId}"] = (Read, typeof(Verified)),
        ["POST /api/v1/verify"] = (Read, typeof(Verified)),
    };

    /// <summary>Status and shape of the good answer; null where it is a file, or too small to have a name.</summary>
    public static (int Status, Type Type)? Of(string endpoint) =>
        Shapes.TryGetValue(ApiWords.Plain(endpoint), out var shape) ? shape : null;
}
