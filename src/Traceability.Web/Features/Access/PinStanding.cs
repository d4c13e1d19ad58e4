using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Access;

/// <summary>By what a person can be known now: the PIN that counts, or the one-time code that has taken its place.</summary>
public sealed record PinStanding(Person Person, PinSetting? Pin, PinCode? Code)
{
    /// <summary>The fact by which the person can be known.</summary>
    public Guid? ProvenBy => Pin?.Id ?? Code?.Id;

    /// <summary>Of whoever has that badge; null when nobody has it.</summary>
    public static async Task<PinStanding?> OfAsync(WorkshopContext db, string badge, CancellationToken cancellation)
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

    /// <summary>People who hold a PIN and can sign in with it.</summary>
    public static IQueryable<Person> WithPin(WorkshopContext db) =>
        db.Set<Person>()
            .Where(p =>
                db.Set<PinSetting>()
                    .Any(s => s.PersonId == p.Id && !db.Set<PinCode>().Any(c => c.PersonId == p.Id && c.RecordedAt >= s.RecordedAt))
            );
}
