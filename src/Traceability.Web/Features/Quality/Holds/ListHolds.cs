using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Holds;

/// <summary>Holds, the latest first.</summary>
public sealed class ListHolds(WorkshopContext db, NameQuery names) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/holds", HandleAsync).Is(Subjects.Holds, "listHolds", "Holds, the latest first.");

    /// <param name="open" example="true">Only those that stop something now, or only those released; all when it is left out.</param>
    public static async Task<JsonOrCsv<Page<HoldAnswer>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListHolds use,
        CancellationToken cancellation,
        bool? open = null
    ) => JsonOrCsv.Of(await use.RunAsync(open, page, cancellation));

    public async Task<Page<HoldAnswer>> RunAsync(bool? open, PageRequest page, CancellationToken cancellation)
    {
        var query = db.Set<Hold>().AsNoTracking();
        if (open is { } wanted)
        {
            query = query.Where(h => wanted != db.Set<HoldRelease>().Any(r => r.HoldId == h.Id));
        }

        if (page.AfterId is { } after)
        {
            query = query.Where(h => h.Id < after);
        }

        var cut = page.Cut(await query.OrderByDescending(h => h.Id).Take(page.Limit + 1).ToListAsync(cancellation), h => h.Id.ToString());
        return new(await AnswersAsync(cut.Items, cancellation), cut.Next);
    }

    /// <summary>One hold as it stands, or null.</summary>
    public async Task<(Hold Hold, HoldAnswer Answer)?> FindAsync(Guid id, CancellationToken cancellation) =>
        await db.Set<Hold>().AsNoTracking().FirstOrDefaultAsync(h => h.Id == id, cancellation) is { } hold
            ? (hold, (await AnswersAsync([hold], cancellation))[0])
            : null;

    /// <summary>The holds put on one lot, part or instrument, oldest first.</summary>
    public async Task<IReadOnlyList<HoldAnswer>> OfSubjectAsync(Guid subjectId, CancellationToken cancellation) =>
        await AnswersAsync(
            await db.Set<Hold>()
                .AsNoTracking()
                .Where(h => h.LotId == subjectId || h.PartId == subjectId || h.InstrumentId == subjectId)
                .OrderBy(h => h.Id)
                .ToListAsync(cancellation),
            cancellation
        );

    private async Task<IReadOnlyList<HoldAnswer>> AnswersAsync(IReadOnlyList<Hold> holds, CancellationToken cancellation)
    {
        var ids = holds.Select(h => h.Id).ToList();
        var releases = await db.Set<HoldRelease>()
            .AsNoTracking()
            .Where(r => ids.Contains(r.HoldId))
            .ToDictionaryAsync(r => r.HoldId, cancellation);
        var subjects = holds.Select(h => h.SubjectId).ToList();
        var codes = await db.Set<Lot>()
            .Where(l => subjects.Contains(l.Id))
            .Select(l => new { l.Id, Code = l.Number })
            .Union(db.Set<Part>().Where(p => subjects.Contains(p.Id)).Select(p => new { p.Id, Code = p.Serial }))
            .Union(db.Set<Instrument>().Where(i => subjects.Contains(i.Id)).Select(i => new { i.Id, i.Code }))
            .ToDictionaryAsync(c => c.Id, c => c.Code, cancellation);
        var people = await names.PeopleAsync(holds.Select(h => h.By).Concat(releases.Values.Select(r => r.By)), cancellation);
        return
        [
            .. holds.Select(h =>
                HoldAnswer.Of(
                    h,
                    new(h.SubjectId, codes[h.SubjectId]),
                    releases.GetValueOrDefault(h.Id),
                    id => people.GetValueOrDefault(id, Who.Nobody)
                )
            ),
        ];
    }
}
