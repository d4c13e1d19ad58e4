using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Lists;
using Traceability.Web.Features.Quality.Holds;
using Traceability.Web.Features.Quality.Nonconformities;
using Traceability.Web.Features.Service.Returns;
using Traceability.Web.Features.Setup.Instruments;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Features.Setup.Overview;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Public.Home;

/// <summary>What needs a person of the desk now; builders are led to their station.</summary>
public sealed class HomeModel(
    WorkshopContext db,
    LotQuery lots,
    ListNonconformities nonconformities,
    ListHolds holds,
    ListParts parts,
    ListReturns returns,
    InstrumentQuery instruments,
    RouteShelf shelf,
    RouteStandingQuery revisions,
    FirstHour firstHour,
    WorkshopCalendar calendar,
    Writes writes
) : DeskPage(writes)
{
    private static readonly PageRequest Many = new(500, null);
    private IReadOnlyList<Domain.Routes.Route> routes = [];

    /// <summary>A number that waits, and where it leads. More than the list's limit is said so.</summary>
    public sealed record Waiting(string Key, string Url, int Number)
    {
        public string Figure => Number >= Many.Limit ? $"{Number}+" : $"{Number}";
    }

    public IReadOnlyList<Waiting> All { get; private set; } = [];

    /// <summary>The nonconformities that have waited longest.</summary>
    public IReadOnlyList<NonconformityRow> Oldest { get; private set; } = [];

    /// <summary>The route in force for a nonconforming part, for its words.</summary>
    public Domain.Routes.Route? RouteOf(NonconformityRow row) => routes.FirstOrDefault(r => r.Model == row.Model && r.Kind == row.Kind);

    /// <summary>Instruments whose calibration ends within the month, or ended.</summary>
    public IReadOnlyList<InstrumentStanding> Due { get; private set; } = [];

    /// <summary>What the workshop lead has to set up next, before parts can be made.</summary>
    public SetupStep? NextStep { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellation)
    {
        if (!May(Role.Quality, Role.Service, Role.Lead) && Navigation.HomeOf(Actor) is var home and not "/")
        {
            return LocalRedirect(home);
        }

        List<Waiting> waiting = [];
        if (May(Role.Quality))
        {
            var open = (await nonconformities.RunAsync(true, null, Many, cancellation, oldestFirst: true)).Items;
            Oldest = [.. open.Take(5)];
            routes = await shelf.AllInForceAsync(db, calendar.DayOf(Now), cancellation);
            waiting.Add(new("nonconformities", "/nonconformities", open.Count));
            waiting.Add(new("holds", "/holds", (await holds.RunAsync(true, Many, cancellation)).Items.Count));
            waiting.Add(
                new(
                    "quarantine",
                    "/lots?state=quarantined",
                    (await ListLots.RunAsync(db, lots, null, "quarantined", false, Many, cancellation)).Items.Count
                )
            );
            waiting.Add(
                new(
                    "units",
                    "/parts?kind=unit&free=true",
                    (await parts.RunAsync(new(PartKinds.Unit, null, null, true), Many, cancellation)).Items.Count
                )
            );
        }

        if (May(Role.Service))
        {
            waiting.Add(new("returns", "/returns", (await returns.RunAsync(true, Many, cancellation)).Items.Count));
        }

        if (May(Role.Lead, Role.Quality))
        {
            var today = calendar.DayOf(Now);
            Due =
            [
                .. (await instruments.FindAsync(null, cancellation)).Where(i =>
                    i.Retired is null && (i.LatestCalibration(today) is not { } c || c.DueOn <= today.AddDays(InstrumentsPage.SoonDays))
                ),
            ];
            waiting.Add(new("due", "/instruments", Due.Count));
            if (await revisions.ProposalsAsync(Actor.Badge, cancellation) is > 0 and var proposals)
            {
                waiting.Add(new("proposals", "/setup/routes#waiting", proposals));
            }
        }

        NextStep = May(Role.Lead) ? (await firstHour.ReadAsync(cancellation)).FirstOrDefault(s => !s.Done) : null;
        All = waiting;
        return Page();
    }
}
