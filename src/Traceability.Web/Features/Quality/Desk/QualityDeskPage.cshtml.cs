using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Quality.Sampling;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Features.Quality.FilmLots;
using Traceability.Web.Features.Quality.Holds;
using Traceability.Web.Features.Quality.Nonconformities;
using Traceability.Web.Features.Quality.Notices;
using Traceability.Web.Features.Quality.Pareto;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Desk;

/// <summary>Where the quality lead begins: what is going wrong, is it this film lot, and what waits for a decision.</summary>
public sealed class QualityDeskPage(
    CompareFilmLots compare,
    ReadPareto pareto,
    ListNonconformities nonconformities,
    ListHolds holds,
    ReadNotices notices,
    FailedSamples samples,
    RouteStandingQuery routes,
    WorkshopContext db,
    LotQuery lots,
    AnalysisFilters filters,
    Writes writes
) : AnalysisPage(filters, writes)
{
    /// <summary>How many film lots, codes and nonconformities stand on the desk; the lists have them all.</summary>
    public const int OnTheDesk = 6;

    private static readonly PageRequest Many = new(500, null);

    public FilmLotAnswer? FilmLots { get; private set; }

    /// <summary>What was noticed over the usual period, whatever the page is filtered by.</summary>
    public NoticesAnswer Notices { get; private set; } = null!;

    public ParetoAnswer? Pareto { get; private set; }

    /// <summary>Open nonconformities, those that wait longest first.</summary>
    public IReadOnlyList<NonconformityRow> Open { get; private set; } = [];

    public IReadOnlyList<LotAnswer> Quarantined { get; private set; } = [];

    public IReadOnlyList<HoldAnswer> Held { get; private set; } = [];

    /// <summary>Panel lots in use whose sample fails.</summary>
    public IReadOnlyList<SampleTally> Samples { get; private set; } = [];

    /// <summary>Revisions of routes that wait for somebody to approve them.</summary>
    public int Proposals { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        if (!May(Role.Quality))
        {
            return Forbid();
        }

        var cancellation = HttpContext.RequestAborted;
        await LoadChoicesAsync();
        (FilmLots, var refusal) = await compare.RunAsync(Asked, null, null, cancellation);
        Notices = await notices.RunAsync(Asked is (null, null, null, null) ? FilmLots : null, cancellation);
        (Pareto, _) = await pareto.RunAsync(Asked with { Stage = null }, cancellation);
        Open = (await nonconformities.RunAsync(true, null, Many, cancellation, oldestFirst: true)).Items;
        Quarantined = (await ListLots.RunAsync(db, lots, null, "quarantined", false, Many, cancellation)).Items;
        Held = (await holds.RunAsync(true, Many, cancellation)).Items;
        Samples = await samples.RunAsync(cancellation);
        Proposals = await routes.ProposalsAsync(null, cancellation);
        return Shown(refusal);
    }

    /// <summary>Whole days since a moment.</summary>
    public int DaysSince(DateTimeOffset moment) => (int)(Now - moment).TotalDays;
}
