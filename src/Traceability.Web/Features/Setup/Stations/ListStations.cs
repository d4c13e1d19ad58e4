using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;
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
    public sealed record StationAnswer(string Code, string Title);

    public static async Task<JsonOrCsv<Page<StationAnswer>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListStations use,
        CancellationToken cancellation
    ) => JsonOrCsv.Of(page.Part(await use.AllAsync(cancellation), s => s.Code));

    public async Task<IReadOnlyList<StationAnswer>> AllAsync(CancellationToken cancellation) =>
        await db.Set<Domain.Records.Station>()
            .AsNoTracking()
            .OrderBy(s => s.Code)
            .Select(s => new StationAnswer(s.Code, s.Title))
            .ToListAsync(cancellation);
}
