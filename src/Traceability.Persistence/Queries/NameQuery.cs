using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>A person as answers name them.</summary>
/// <param name="Badge" example="BUILD1">The person's badge, or the code of an instrument that acted by itself.</param>
/// <param name="Name" example="Ilsa Branoch">The person's name, or the instrument's title.</param>
public sealed record Who(string Badge, string Name)
{
    /// <summary>Stands in for an id that belongs to nobody, such as the first account's maker.</summary>
    public static readonly Who Nobody = new("-", "the service");
}

/// <summary>Puts names to ids.</summary>
public sealed class NameQuery(WorkshopContext db)
{
    /// <summary>People by id, and instruments that acted by themselves.</summary>
    public async Task<IReadOnlyDictionary<Guid, Who>> PeopleAsync(IEnumerable<Guid> ids, CancellationToken cancellation)
    {
        var wanted = ids.Distinct().ToList();
        var found = await db.Set<Person>()
            .Where(p => wanted.Contains(p.Id))
            .Select(p => new
            {
                p.Id,
                p.Badge,
                Name = db.Set<NameCorrection>()
                    .Where(c => c.SubjectId == p.Id)
                    .OrderByDescending(c => c.RecordedAt)
                    .Select(c => c.Name)
                    .FirstOrDefault()
                    ?? p.Name,
            })
            .ToDictionaryAsync(p => p.Id, p => new Who(p.Badge, p.Name), cancellation);
        var others = wanted.Where(id => !found.ContainsKey(id)).ToList();
        if (others.Count > 0)
        {
            foreach (
                var i in await db.Set<Instrument>()
                    .Where(i => others.Contains(i.Id))
                    .Select(i => new
                    {
                        i.Id,
                        i.Code,
                        Title = db.Set<NameCorrection>()
                            .Where(c => c.SubjectId == i.Id)
                            .OrderByDescending(c => c.RecordedAt)
                            .Select(c => c.Name)
                            .FirstOrDefault()
                            ?? i.Title,
                    })
                    .ToListAsync(cancellation)
            )
            {
                found[i.Id] = new(i.Code, i.Title);
            }
        }

        return found;
    }

    /// <summary>Parts by id.</summary>
    public async Task<IReadOnlyDictionary<Guid, Part>> PartsAsync(IEnumerable<Guid> ids, CancellationToken cancellation)
    {
        var wanted = ids.Distinct().ToList();
        return await db.Set<Part>().AsNoTracking().Where(p => wanted.Contains(p.Id)).ToDictionaryAsync(p => p.Id, cancellation);
    }

    /// <summary>Lots by id.</summary>
    public async Task<IReadOnlyDictionary<Guid, Lot>> LotsAsync(IEnumerable<Guid> ids, CancellationToken cancellation)
    {
        var wanted = ids.Distinct().ToList();
        return await db.Set<Lot>().AsNoTracking().Where(l => wanted.Contains(l.Id)).ToDictionaryAsync(l => l.Id, cancellation);
    }
}
