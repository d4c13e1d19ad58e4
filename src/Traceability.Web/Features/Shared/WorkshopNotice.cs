using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;
using Traceability.Web.Hosting;

namespace Traceability.Web.Features.Shared;

/// <summary>What every page says about the workshop: its name, and whether its people and parts are made up.</summary>
public sealed record WorkshopFacts(string Name, bool Demo);

/// <summary>Reads the workshop's settings, once a request.</summary>
public sealed class WorkshopNotice(WorkshopContext db)
{
    private static readonly string[] Wanted = [WorkshopSettings.WorkshopName, WorkshopSettings.Demonstration];

    private WorkshopFacts? facts;

    /// <summary>The workshop's name and whether it is the demonstration.</summary>
    public async Task<WorkshopFacts> ReadAsync(CancellationToken cancellation)
    {
        if (facts is null)
        {
            var settings = await db.Set<WorkshopSetting>().AsNoTracking().Where(s => Wanted.Contains(s.Name)).ToDictionaryAsync(s => s.Name, s => s.Value, cancellation);
            facts = new(settings.GetValueOrDefault(WorkshopSettings.WorkshopName) ?? "Traceability", settings.ContainsKey(WorkshopSettings.Demonstration));
        }

        return facts;
    }
}
