using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Shared;

/// <summary>What every page says about the workshop: its name, and whether its people and parts are made up.</summary>
public sealed record WorkshopFacts(string Name, bool Demo);

/// <summary>Reads the workshop's settings, once a request.</summary>
public sealed class WorkshopNotice(WorkshopContext db)
{
    private WorkshopFacts? facts;

    /// <summary>The settings <c>name</c> and <c>demo</c>.</summary>
    public async Task<WorkshopFacts> ReadAsync(CancellationToken cancellation)
    {
        if (facts is null)
        {
            var settings = await db.Set<WorkshopSetting>().AsNoTracking().Where(s => s.Name == "name" || s.Name == "demo").ToDictionaryAsync(s => s.Name, s => s.Value, cancellation);
            facts = new(settings.GetValueOrDefault("name") ?? "Traceability", settings.TryGetValue("demo", out var demo) && demo is not ("false" or ""));
        }

        return facts;
    }
}
