using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Shared;

/// <summary>What every page says about the workshop: its name, and whether its people and parts are made up.</summary>
/// <param name="Workshop">The workshop's own name; null when nobody has said it.</param>
/// <param name="Demo">True when the store holds the invented demonstration.</param>
public sealed record WorkshopFacts(string? Workshop, bool Demo)
{
    private const string Program = "Traceability";

    /// <summary>
    /// What stands at the head of a page: the workshop's name, else the program's. No document speaks in the program's name.
    /// </summary>
    public string Name => Workshop ?? Program;
}

/// <summary>
/// Reads the workshop's name and whether it is the demonstration, once a request. The invented workshop has its own name; any other is
/// named by <c>TRACEABILITY_WORKSHOP</c>.
/// </summary>
public sealed class WorkshopNotice(WorkshopContext db, IConfiguration configuration)
{
    public const string Setting = "TRACEABILITY_WORKSHOP";

    private static readonly string[] Wanted = [WorkshopSettings.WorkshopName, WorkshopSettings.Demonstration];

    private WorkshopFacts? facts;

    public async Task<WorkshopFacts> ReadAsync(CancellationToken cancellation)
    {
        if (facts is null)
        {
            var settings = await db.Set<WorkshopSetting>()
                .AsNoTracking()
                .Where(s => Wanted.Contains(s.Name))
                .ToDictionaryAsync(s => s.Name, s => s.Value, cancellation);
            var named = string.IsNullOrWhiteSpace(configuration[Setting]) ? null : configuration[Setting]!.Trim();
            var demo = settings.ContainsKey(WorkshopSettings.Demonstration);
            facts = new(
                demo
                    ? settings.GetValueOrDefault(WorkshopSettings.WorkshopName) ?? named
                    : named ?? settings.GetValueOrDefault(WorkshopSettings.WorkshopName),
                demo
            );
        }

        return facts;
    }
}
