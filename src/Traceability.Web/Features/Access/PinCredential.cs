using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Access;

/// <summary>What a person signs in with now: the PIN that counts, or the one-time code that has taken its place.</summary>
public sealed record PinCredential(Person Person, PinSetting? Pin, PinCode? Code)
{
    /// <summary>The fact that the credential was set or given by.</summary>
    public Guid? ProvenBy => Pin?.Id ?? Code?.Id;

    /// <summary>Of whoever has that badge; null when nobody has it.</summary>
    public static async Task<PinCredential?> OfAsync(WorkshopContext db, string badge, CancellationToken cancellation)
    {
        var found = await db.Set<Person>()
            .AsNoTracking()
            .Where(p => p.Badge == badge)
            .Select(p => new
            {
                Person = p,
                Pin = db.Set<PinSetting>().Where(s => s.PersonId == p.Id).OrderByDescending(s => s.RecordedAt).FirstOrDefault(),
                Code = db.Set<PinCode>().Where(c => c.PersonId == p.Id).OrderByDescending(c => c.RecordedAt).FirstOrDefault(),
            })
            .FirstOrDefaultAsync(cancellation);
        return found is null ? null
            : found.Code is { } code && (found.Pin is null || found.Pin.RecordedAt <= code.RecordedAt) ? new(found.Person, null, code)
            : new(found.Person, found.Pin, null);
    }

    /// <summary>People who hold a PIN and can sign in with it; whoever was deactivated cannot.</summary>
    public static IQueryable<Person> WithPin(WorkshopContext db) =>
        db.Offered<Person>()
            .Where(p =>
                db.Set<PinSetting>()
                    .Any(s => s.PersonId == p.Id && !db.Set<PinCode>().Any(c => c.PersonId == p.Id && c.RecordedAt >= s.RecordedAt))
            );
}
