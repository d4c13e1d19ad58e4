using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.Lists;

/// <summary>All parts, by kind, model and state.</summary>
public sealed class PartsPage(ListParts list, WorkshopContext db, RouteShelf shelf, WorkshopCalendar calendar, Writes writes)
    : DeskPage(writes)
{
    /// <summary>The states that may be asked for.</summary>
    public static readonly IReadOnlyList<string> States = [.. Enum.GetValues<PartState>().Select(Words.Of)];

    private IReadOnlyList<Domain.Routes.Route> inForce = [];

    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Model { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? State { get; set; }

    /// <summary>The revision of the route that the parts run on.</summary>
    [BindProperty(SupportsGet = true)]
    public int? Revision { get; set; }

    /// <summary>Every stage done, or still in work.</summary>
    [BindProperty(SupportsGet = true)]
    public bool? Finished { get; set; }

    /// <summary>Finished, in the house and with nothing in the way.</summary>
    [BindProperty(SupportsGet = true)]
    public bool? Free { get; set; }

    public IReadOnlyList<PartAnswer> Parts { get; private set; } = [];

    public IReadOnlyList<string> Kinds { get; private set; } = [];

    public IReadOnlyList<string> Models { get; private set; } = [];

    public Paging Paging { get; private set; } = null!;

    /// <summary>The title of the part's next stage.</summary>
    public string? TitleOf(PartAnswer part) =>
        inForce.FirstOrDefault(r => r.Model == part.Model && r.Kind == part.Kind)?.Find(part.Stage ?? "")?.Title ?? part.Stage;

    public bool Filtered => (Kind ?? Model ?? State) is not null || Free is not null || Revision is not null || Finished is not null;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        var page = await list.RunAsync(
            new(Kind, Model, State, Free, Revision, Finished),
            await Paging.AskedAsync(HttpContext),
            cancellation
        );
        (Parts, Paging) = (page.Items, Paging.Of(Request, page.Next));
        var routes = await db.Set<Domain.Records.RouteRevision>().Select(r => new { r.Kind, r.Model }).Distinct().ToListAsync(cancellation);
        inForce = await shelf.AllInForceAsync(db, calendar.DayOf(Now), cancellation);
        Kinds = [.. routes.Select(r => r.Kind).Distinct().Order(StringComparer.Ordinal)];
        Models = [.. routes.Select(r => r.Model).Distinct().Order(StringComparer.Ordinal)];
    }
}
