using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Everybody known here.</summary>
public sealed class ListPeople : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/people", HandleAsync).Is(Subjects.People, "listPeople", "Everybody, with roles and qualifications.");

    public static async Task<JsonOrCsv<Page<PersonAnswer>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        WorkshopContext db,
        WorkshopCalendar calendar,
        Writes writes,
        CancellationToken cancellation
    ) =>
        JsonOrCsv.Of(
            page.Part([.. (await AllAsync(db, cancellation)).Select(a => PersonAnswer.Of(a, calendar.DayOf(writes.Now)))], p => p.Badge)
        );

    /// <summary>All people, by badge.</summary>
    public static async Task<IReadOnlyList<Actor>> AllAsync(WorkshopContext db, CancellationToken cancellation)
    {
        var people = await db.Set<Person>().AsNoTracking().OrderBy(p => p.Badge).ToListAsync(cancellation);
        var roles = (await db.Set<RoleGrant>().AsNoTracking().OrderBy(g => g.RecordedAt).ToListAsync(cancellation)).ToLookup(g =>
            g.PersonId
        );
        var qualifications = (await db.Set<QualificationGrant>().AsNoTracking().ToListAsync(cancellation)).ToLookup(g => g.PersonId);
        return
        [
            .. people.Select(p => new Actor(
                p.Id,
                p.Badge,
                p.Name,
                roles[p.Id].GroupBy(g => g.Role).Where(g => g.Last().Given).Select(g => g.Key).ToHashSet(),
                [.. qualifications[p.Id]]
            )),
        ];
    }
}
