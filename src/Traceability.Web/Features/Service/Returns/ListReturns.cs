using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Returns, the latest first.</summary>
public sealed class ListReturns(WorkshopContext db, ReturnRows rows) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/returns", HandleAsync)
            .For(Role.Service, Role.Quality)
            .Is(Subjects.Returns, "listReturns", "Returns, the latest first.");

    /// <param name="open" example="true">Only those that are open, or only those that are closed; all, when left out.</param>
    public static async Task<JsonOrCsv<Page<ReturnRow>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListReturns use,
        CancellationToken cancellation,
        bool? open = null
    ) => JsonOrCsv.Of(await use.RunAsync(open, page, cancellation));

    public async Task<Page<ReturnRow>> RunAsync(bool? open, PageRequest page, CancellationToken cancellation)
    {
        var query = db.Set<UnitReturn>().AsNoTracking();
        if (open is { } wanted)
        {
            query = query.Where(r => wanted != db.Set<ReturnClosing>().Any(c => c.ReturnId == r.Id));
        }

        if (page.AfterId is { } after)
        {
            query = query.Where(r => r.Id < after);
        }

        var cut = page.Cut(await query.OrderByDescending(r => r.Id).Take(page.Limit + 1).ToListAsync(cancellation), r => r.Id.ToString());
        return new(await rows.OfAsync(cut.Items, cancellation), cut.Next);
    }

    /// <summary>Everything taken back from a moment (included) to a moment (excluded), in the order of coming.</summary>
    public async Task<IReadOnlyList<ReturnRow>> ReceivedAsync(DateTimeOffset from, DateTimeOffset to, CancellationToken cancellation) =>
        await rows.OfAsync(
            await db.Set<UnitReturn>()
                .AsNoTracking()
                .Where(r => r.OccurredAt >= from && r.OccurredAt < to)
                .OrderBy(r => r.OccurredAt)
                .ThenBy(r => r.Id)
                .ToListAsync(cancellation),
            cancellation
        );
}
