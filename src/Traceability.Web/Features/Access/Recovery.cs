using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Access;

/// <summary>A link for a workshop lead that was made on the server's command line.</summary>
/// <param name="Badge">Whose access it was for.</param>
/// <param name="Name">The person's name.</param>
/// <param name="At">When.</param>
public sealed record MadeRecovery(string Badge, string Name, DateTimeOffset At);

/// <summary>
/// What everybody is told of links made on the server's command line: nobody signs in by one unseen. Read by every page, from a table that
/// holds a row for every code ever given.
/// </summary>
public sealed class Recovery(WorkshopContext db, TimeProvider clock)
{
    /// <summary>Why such a code was given, as the ledger keeps it.</summary>
    public const string Reason = "recover-lead on the server's command line";

    /// <summary>For how long it is said on every page; common practice, no source.</summary>
    private static readonly TimeSpan Said = TimeSpan.FromDays(14);

    /// <summary>Those of the last two weeks, the newest first. Codes that somebody gave have a giver; these have none.</summary>
    public async Task<IReadOnlyList<MadeRecovery>> LatelyAsync(CancellationToken cancellation)
    {
        var since = clock.GetUtcNow() - Said;
        return await db.Set<PinCode>()
            .Where(c => c.By == Guid.Empty && c.RecordedAt > since)
            .OrderByDescending(c => c.RecordedAt)
            .Join(db.Set<Person>(), c => c.PersonId, p => p.Id, (c, p) => new MadeRecovery(p.Badge, p.Name, c.RecordedAt))
            .ToListAsync(cancellation);
    }
}
