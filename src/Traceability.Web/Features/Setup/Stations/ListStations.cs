using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Stations;

/// <summary>The benches and cabinets.</summary>
public sealed class ListStations(WorkshopContext db) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/stations", HandleAsync).Is(Subjects.Stations, "listStations", "The benches and cabinets.");

    /// <summary>A bench or a cabinet.</summary>
    /// <param name="Code" example="PLATE-1">Its code, as its label says it.</param>
    /// <param name="Title" example="Hot plate 1">What it is.</param>
    /// <param name="RetiredBecause" example="sold">Why it is retired; null while it is in use.</param>
    public sealed record StationAnswer(string Code, string Title, string? RetiredBecause = null);

    /// <param name="retired" example="true">Those that are retired too; without it only what new work may use.</param>
    public static async Task<JsonOrCsv<Page<StationAnswer>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListStations use,
        CancellationToken cancellation,
        bool retired = false
    ) => JsonOrCsv.Of(page.Part(await use.AllAsync(retired, cancellation), s => s.Code));

    public async Task<IReadOnlyList<StationAnswer>> AllAsync(bool retired, CancellationToken cancellation)
    {
        var kept = await db.Kept<Domain.Records.Station>().AsNoTracking().OrderBy(s => s.Code).ToListAsync(cancellation);
        var setAside = await db.SetAsideAsync(SetupSort.Station, cancellation);
        var names = await db.CorrectedNamesAsync(kept.Select(s => s.Id), cancellation);
        return
        [
            .. kept.Where(s => retired || !setAside.ContainsKey(s.Id))
                .Select(s => new StationAnswer(s.Code, names.GetValueOrDefault(s.Id, s.Title), setAside.GetValueOrDefault(s.Id)?.Reason)),
        ];
    }
}
