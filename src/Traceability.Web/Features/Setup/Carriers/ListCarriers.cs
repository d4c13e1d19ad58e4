using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Carriers;

/// <summary>The jigs, trays and tins, with what lies in them.</summary>
public sealed class ListCarriers(WorkshopContext db) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/carriers", HandleAsync).Is(Subjects.Stations, "listCarriers", "The jigs, trays and tins, with what lies in them.");

    /// <summary>A jig, tray or tin with a coded tag of its own.</summary>
    /// <param name="Code" example="JIG-07">Its code, as its tag says it.</param>
    /// <param name="Kind" example="jig">What it is.</param>
    /// <param name="Serial" example="CS26-00012">The part that lies in it now; null when it is empty.</param>
    /// <param name="RetiredBecause" example="worn out">Why it is retired; null while it is in use.</param>
    public sealed record CarrierAnswer(string Code, string Kind, string? Serial, string? RetiredBecause);

    /// <param name="retired" example="true">Those that are retired too; without it only what new work may use.</param>
    public static async Task<JsonOrCsv<Page<CarrierAnswer>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListCarriers use,
        CancellationToken cancellation,
        bool retired = false
    ) => JsonOrCsv.Of(page.Part(await use.AllAsync(retired, cancellation), c => c.Code));

    public async Task<IReadOnlyList<CarrierAnswer>> AllAsync(bool retired, CancellationToken cancellation)
    {
        var carriers = await db.Kept<Carrier>()
            .AsNoTracking()
            .OrderBy(c => c.Code)
            .Select(c => new
            {
                c.Id,
                c.Code,
                c.Kind,
                Serial = db.Set<PartStanding>()
                    .Where(s => s.CarrierCode == c.Code)
                    .Join(db.Set<Part>(), s => s.PartId, p => p.Id, (_, p) => p.Serial)
                    .FirstOrDefault(),
            })
            .ToListAsync(cancellation);
        var setAside = await db.SetAsideAsync(SetupSort.Carrier, cancellation);
        return
        [
            .. carriers
                .Where(c => retired || !setAside.ContainsKey(c.Id))
                .Select(c => new CarrierAnswer(c.Code, c.Kind, c.Serial, setAside.GetValueOrDefault(c.Id)?.Reason)),
        ];
    }
}
