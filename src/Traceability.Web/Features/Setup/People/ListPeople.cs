using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Everybody known here.</summary>
public sealed class ListPeople : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/people", HandleAsync).Is(Subjects.People, "listPeople", "Everybody, with roles and qualifications.");

    /// <param name="deactivated" example="true">Those who sign in no more too; without it only who works here.</param>
    public static async Task<JsonOrCsv<Page<PersonAnswer>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        WorkshopContext db,
        WorkshopCalendar calendar,
        Writes writes,
        CancellationToken cancellation,
        bool deactivated = false
    ) => JsonOrCsv.Of(page.Part(await AnswersAsync(db, deactivated, calendar.DayOf(writes.Now), cancellation), p => p.Badge));

    /// <summary>The people by badge, with what they may do on a day; those who were deactivated when they are asked for.</summary>
    public static async Task<IReadOnlyList<PersonAnswer>> AnswersAsync(
        WorkshopContext db,
        bool deactivated,
        DateOnly day,
        CancellationToken cancellation
    )
    {
        var ended = await db.SetAsideAsync(SetupSort.Person, cancellation);
        return
        [
            .. (await AllAsync(db, cancellation))
                .Where(a => deactivated || !ended.ContainsKey(a.PersonId))
                .Select(a => PersonAnswer.Of(a, day) with { DeactivatedBecause = ended.GetValueOrDefault(a.PersonId)?.Reason }),
        ];
    }

    /// <summary>All people, by badge.</summary>
    public static async Task<IReadOnlyList<Actor>> AllAsync(WorkshopContext db, CancellationToken cancellation)
    {
        var people = await db.Set<Person>().AsNoTracking().OrderBy(p => p.Badge).ToListAsync(cancellation);
        var roles = (await db.Set<RoleGrant>().AsNoTracking().OrderBy(g => g.RecordedAt).ToListAsync(cancellation)).ToLookup(g =>
            g.PersonId
        );
        var names = await db.CorrectedNamesAsync(people.Select(p => p.Id), cancellation);
        var qualifications = (await db.Set<QualificationGrant>().AsNoTracking().ToListAsync(cancellation)).ToLookup(g => g.PersonId);
        return
        [
            .. people.Select(p => new Actor(
                p.Id,
                p.Badge,
                names.GetValueOrDefault(p.Id, p.Name),
                roles[p.Id].GroupBy(g => g.Role).Where(g => g.Last().Given).Select(g => g.Key).ToHashSet(),
                [.. qualifications[p.Id]]
            )),
        ];
    }
}
