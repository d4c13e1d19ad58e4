using Microsoft.AspNetCore.Authorization;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Overview;

/// <summary>What the workshop is made of, and what is missing before the first part can be made.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class SetupPage(WorkshopContext db, WorkshopNotice notice, Writes writes) : DeskPage(writes)
{
    /// <summary>One line of the overview: how many there are, and where to go.</summary>
    public sealed record Count(string Key, string Url, int Number);

    public IReadOnlyList<Count> Counts { get; private set; } = [];

    public WorkshopFacts Facts { get; private set; } = null!;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        Facts = await notice.ReadAsync(cancellation);
        Counts =
        [
            new("people", "/setup/people", await db.Set<Person>().CountAsync(cancellation)),
            new("stations", "/setup/stations", await db.Set<Domain.Records.Station>().CountAsync(cancellation)),
            new("instruments", "/instruments", await db.Set<Instrument>().CountAsync(cancellation)),
            new("routes", "/setup/routes", await db.Set<RouteRevision>().Select(r => new { r.Model, r.Kind }).Distinct().CountAsync(cancellation)),
            new("lots", "/lots", await db.Set<Lot>().CountAsync(cancellation)),
        ];
    }
}
