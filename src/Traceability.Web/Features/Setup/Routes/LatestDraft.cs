using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Drafts;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>The latest revision of a route that was neither rejected nor withdrawn, as the beginning of the next one.</summary>
public sealed class LatestDraft(WorkshopContext db, WorkshopCalendar calendar, Writes writes)
{
    /// <summary>What was found: the draft, the revision that it is made from, and the highest number in use with its author.</summary>
    public sealed record Found(DraftMap Draft, int From, int Latest, string LatestAuthor);

    /// <summary>The draft of the next revision, which that person writes; null when there is none to begin from.</summary>
    public async Task<Found?> FindAsync(string model, string kind, Actor author, CancellationToken cancellation)
    {
        var all = await db.Set<RouteRevision>()
            .AsNoTracking()
            .Where(r => r.Model == model && r.Kind == kind)
            .OrderByDescending(r => r.Revision)
            .Select(r => new { Revision = r, Ended = db.Set<RouteEnding>().Any(e => e.RouteId == r.Id) })
            .ToListAsync(cancellation);
        if (all.Find(r => !r.Ended)?.Revision is not { } from || DraftReader.Read(from.Text) is not { } draft)
        {
            return null;
        }

        var latest = all[0].Revision;
        draft["revision"] = (latest.Revision + 1).ToString(CultureInfo.InvariantCulture);
        draft["author"] = author.Badge;
        draft["approvedBy"] = "";
        draft["reason"] = "";
        draft["effectiveFrom"] = calendar.DayOf(writes.Now).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return new(draft, from.Revision, latest.Revision, latest.Author);
    }
}
