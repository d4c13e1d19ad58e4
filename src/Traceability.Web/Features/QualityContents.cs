using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Features.Quality.Causes;
using Traceability.Web.Features.Quality.Certificates;
using Traceability.Web.Features.Quality.Concessions;
using Traceability.Web.Features.Quality.ControlCharts;
using Traceability.Web.Features.Quality.Desk;
using Traceability.Web.Features.Quality.Doubts;
using Traceability.Web.Features.Quality.FilmLots;
using Traceability.Web.Features.Quality.GaugeStudies;
using Traceability.Web.Features.Quality.Holds;
using Traceability.Web.Features.Quality.Ledger;
using Traceability.Web.Features.Quality.Nonconformities;
using Traceability.Web.Features.Quality.Notices;
using Traceability.Web.Features.Quality.Pareto;
using Traceability.Web.Features.Quality.Reports;
using Traceability.Web.Features.Quality.Shipments;
using Traceability.Web.Features.Quality.Trace;
using Traceability.Web.Features.Quality.WhereUsed;
using Traceability.Web.Features.Quality.Yields;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features;

/// <summary>What the quality lead asks and decides.</summary>
public static class QualityContents
{
    public static readonly Contents All = new Contents()
        .With<ListNonconformities>()
        .With<RaiseNonconformity>()
        .With<DecideNonconformity>()
        .With<ListHolds>()
        .With<PutHold>()
        .With<ReleaseHold>()
        .With<ShipUnit>()
        .With<IssueCertificate>()
        .With<ListCertificates>()
        .With<ReadLatestCertificatePdf>()
        .With<ReadCertificatePdf>()
        .With<ReadCertificate>()
        .With<FindUses>()
        .With<ListConcessions>()
        .With<GiveConcession>()
        .With<ListGaugeStudies>()
        .With<ReadGaugeStudy>()
        .With<DesignGaugeStudy>()
        .With<TakeStudyReadings>()
        .With<TraceParts>()
        .With<ListAffected>()
        .With<DecideAffected>()
        .With<HoldTraced>()
        .With<ListTracedHolds>()
        .With<ReadTracedHold>()
        .With<ReleaseTracedHold>()
        .With<ReadLedger>()
        .With<CompareFilmLots>()
        .With<ListFilmLotParts>()
        .With<RankCauses>()
        .With<ListCauseParts>()
        .With<DrawControlChart>()
        .With<ReadPareto>()
        .With<ReadYield>()
        .With<ReadNotices>()
        .With<AcknowledgeNotice>()
        .With<ReadMonthlyReport>()
        .With<ReadMonthlyReportPdf>()
        .Needing<PreviewHold>()
        .Needing<VerificationAddress>()
        .Needing<CertificateSources>()
        .Needing<IssuedCertificates>()
        .Needing<PermitQuery>()
        .Needing<GaugeStudyReader>()
        .Needing<TraceQuery>()
        .Needing<TraceSubjects>()
        .Needing<TracedStandings>()
        .Needing<TracedHoldReader>()
        .Needing<DoubtfulPartsQuery>()
        .Needing<AnalysisFilters>()
        .Needing<FilmLotQuery>()
        .Needing<FilmBackQuery>()
        .Needing<FilmPartsQuery>()
        .Needing<CauseQuery>()
        .Needing<CauseQuestions>()
        .Needing<ChartQuery>()
        .Needing<FailedSamples>()
        .Needing<YieldQuery>()
        .Needing<WatchQuery>()
        .Needing<MonthQuery>()
        .Needing<SeriesQuery>()
        .Needing<MonthlyReportSources>();
}
