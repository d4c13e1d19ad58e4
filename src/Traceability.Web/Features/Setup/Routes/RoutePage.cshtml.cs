using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;
using DomainRoute = Traceability.Domain.Routes.Route;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>One revision of a route, stage by stage, to be read by people.</summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Quality)}")]
public sealed class RoutePage(WorkshopContext db, RouteShelf shelf, Writes writes) : DeskPage(writes)
{
    public RouteRevision Revision { get; private set; } = null!;

    public DomainRoute Route { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(string model, string kind, int revision)
    {
        if (await db.Set<RouteRevision>().AsNoTracking().FirstOrDefaultAsync(r => r.Model == model && r.Kind == kind && r.Revision == revision) is not { } found)
        {
            return NotFound();
        }

        (Revision, Route) = (found, await shelf.GetAsync(db, found.Id, HttpContext.RequestAborted));
        return Page();
    }

    /// <summary>The file as it was loaded.</summary>
    public async Task<IActionResult> OnGetFileAsync(string model, string kind, int revision) =>
        await OnGetAsync(model, kind, revision) is PageResult ? File(System.Text.Encoding.UTF8.GetBytes(Revision.Text), "text/yaml", $"{model}-{kind}-{revision}.yaml".ToLowerInvariant()) : NotFound();
}
