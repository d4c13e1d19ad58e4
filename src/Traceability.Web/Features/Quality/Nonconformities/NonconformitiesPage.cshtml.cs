using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Nonconformities;

/// <summary>The queue of nonconformities, the oldest first; or those decided, the latest first.</summary>
public sealed class NonconformitiesPage(
    ListNonconformities list,
    WorkshopContext db,
    RouteShelf shelf,
    WorkshopCalendar calendar,
    Writes writes
) : DeskPage(writes)
{
    private IReadOnlyList<Domain.Routes.Route> routes = [];

    /// <summary>True for those that no longer wait.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Closed { get; set; }

    public IReadOnlyList<NonconformityRow> Rows { get; private set; } = [];

    public Paging Paging { get; private set; } = null!;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        var page = await list.RunAsync(!Closed, null, await Paging.AskedAsync(HttpContext), cancellation, oldestFirst: !Closed);
        (Rows, Paging) = (page.Items, Paging.Of(Request, page.Next));
        routes = await shelf.AllInForceAsync(db, calendar.DayOf(Now), cancellation);
    }

    /// <summary>The route in force for the row's kind of part, for its words.</summary>
    public Domain.Routes.Route? RouteOf(NonconformityRow row) => routes.FirstOrDefault(r => r.Model == row.Model && r.Kind == row.Kind);

    /// <summary>How long it has waited: "3 d 4 h", "2 h 05 min".</summary>
    public string AgeOf(NonconformityRow row) =>
        (Now - row.RaisedAt) switch
        {
            { TotalHours: < 1 } age => QualitySentences.AgeInMinutes(Math.Max(0, (int)age.TotalMinutes)),
            { TotalDays: < 1 } age => QualitySentences.AgeInHours((int)age.TotalHours, age.Minutes),
            var age => $"{(int)age.TotalDays} d {age.Hours} h",
        };
}
