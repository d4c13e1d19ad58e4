using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Shared;
using Traceability.Web.Features.Station.Bench;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.ListParts;

/// <summary>All parts, by kind, model and state.</summary>
public sealed class PartsPage(ListParts list, WorkshopContext db, Writes writes) : DeskPage(writes)
{
    /// <summary>The states that may be asked for.</summary>
    public static readonly IReadOnlyList<string> States = [.. Enum.GetValues<PartState>().Select(Words.Of)];

    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Model { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? State { get; set; }

    public IReadOnlyList<PartAnswer> Parts { get; private set; } = [];

    public IReadOnlyList<string> Kinds { get; private set; } = [];

    public IReadOnlyList<string> Models { get; private set; } = [];

    public Paging Paging { get; private set; } = null!;

    public bool Filtered => (Kind ?? Model ?? State) is not null;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        var page = await list.RunAsync(new(Kind, Model, State, null), await Paging.AskedAsync(HttpContext), cancellation);
        (Parts, Paging) = (page.Items, Paging.Of(Request, page.Next));
        var routes = await db.Set<Domain.Records.RouteRevision>().Select(r => new { r.Kind, r.Model }).Distinct().ToListAsync(cancellation);
        Kinds = [.. routes.Select(r => r.Kind).Distinct().Order(StringComparer.Ordinal)];
        Models = [.. routes.Select(r => r.Model).Distinct().Order(StringComparer.Ordinal)];
    }
}
