using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>
/// Two models whose serials begin alike are told apart by nobody who reads a serial: a route that takes a prefix of another model is
/// asked about. It is only a warning, for the numbers themselves never collide.
/// </summary>
public sealed class SharedPrefix(WorkshopContext db)
{
    /// <summary>The routes of other models whose latest revision has that prefix, in words; null when there are none.</summary>
    public async Task<string?> WarningAsync(Domain.Routes.Route route, CancellationToken cancellation)
    {
        if (string.IsNullOrEmpty(route.SerialPrefix))
        {
            return null;
        }

        var others = await db.Set<RouteRevision>()
            .Where(r => r.Model != route.Model)
            .Where(r => !db.Set<RouteRevision>().Any(n => n.Model == r.Model && n.Kind == r.Kind && n.Revision > r.Revision))
            .Where(r => r.Text.Contains(route.SerialPrefix))
            .Select(r => r.Text)
            .ToListAsync(cancellation);
        var same = others
            .Select(text => RouteText.ReadKept(text).Route)
            .Where(r => r is not null && string.Equals(r.SerialPrefix, route.SerialPrefix, StringComparison.OrdinalIgnoreCase))
            .Select(r => $"{r!.Model}/{r.Kind}")
            .Order(StringComparer.Ordinal)
            .ToList();
        return same.Count == 0 ? null : SetupSentences.PrefixIsUsedBy(route.SerialPrefix, string.Join(", ", same));
    }
}
