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
        .With<DecideOnNonconformity>()
        .With<ListHolds>()
        .With<PutHold>()
        .With<LiftHold>()
        .With<ShipUnit>()
        .With<IssueCertificate>()
        .With<ReadCertificates>()
        .With<FindUses>()
        .With<GiveConcession>()
        .With<DesignGaugeStudy>()
        .With<TraceParts>()
        .With<DecideOnDoubts>()
        .With<HoldTraced>()
        .With<TracedHolds>()
        .With<LiftTracedHold>()
        .With<ReadLedger>()
        .With<CompareFilmLots>()
        .With<ListFilmLotParts>()
        .With<RankCauses>()
        .With<DrawChart>()
        .With<ReadPareto>()
        .With<ReadYield>()
        .With<ReadNotices>()
        .With<AcknowledgeNotice>()
        .With<ReadMonthlyReport>()
        .Needing<PreviewHold>()
        .Needing<VerifyAddress>()
        .Needing<CertificateSources>()
        .Needing<PermitQuery>()
        .Needing<TraceQuery>()
        .Needing<TracedStandings>()
        .Needing<DoubtfulPartsQuery>()
        .Needing<AnalysisFilters>()
        .Needing<FilmLotQuery>()
        .Needing<FilmBackQuery>()
        .Needing<FilmPartsQuery>()
        .Needing<CauseQuery>()
        .Needing<ChartQuery>()
        .Needing<FailedSamples>()
        .Needing<YieldQuery>()
        .Needing<WatchQuery>()
        .Needing<MonthQuery>()
        .Needing<GatherMonth>();
}
