using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>Lots, by kind and state.</summary>
public sealed class LotsPage(WorkshopContext db, LotQuery lots, Writes writes) : DeskPage(writes)
{
    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? State { get; set; }

    public IReadOnlyList<LotAnswer> Lots { get; private set; } = [];

    public IReadOnlyList<string> Kinds { get; private set; } = [];

    public Paging Paging { get; private set; } = null!;

    public bool Filtered => (Kind ?? State) is not null;

    public bool MayReceive => May(Role.Quality, Role.Importer);

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        State = State is "released" or "quarantined" ? State : null;
        var page = await ListLots.RunAsync(db, lots, Kind, State, true, await Paging.AskedAsync(HttpContext), cancellation);
        (Lots, Paging) = (page.Items, Paging.Of(Request, page.Next));
        Kinds = await db.Kept<Lot>().Select(l => l.Kind).Distinct().OrderBy(k => k).ToListAsync(cancellation);
    }
}
