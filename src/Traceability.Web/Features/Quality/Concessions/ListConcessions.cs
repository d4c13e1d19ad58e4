using Traceability.Domain.Values;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Concessions;

/// <summary>Concessions given beforehand, and what was used of each.</summary>
public sealed class ListConcessions(PermitQuery permits, NameQuery names, WorkshopCalendar calendar, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/concessions", HandleAsync)
            .Is(Subjects.Nonconformities, "listConcessions", "Concessions given beforehand, with what is left of each.");

    public static async Task<JsonOrCsv<Page<ConcessionRow>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListConcessions use,
        CancellationToken cancellation
    ) => JsonOrCsv.Of(page.Part(await use.RunAsync(cancellation), c => c.Number));

    /// <summary>All of them, the latest first.</summary>
    public async Task<IReadOnlyList<ConcessionRow>> RunAsync(CancellationToken cancellation)
    {
        var found = await permits.FindAsync(null, cancellation);
        var people = await names.PeopleAsync(found.Select(p => p.Permit.By), cancellation);
        var today = calendar.DayOf(writes.Now);
        return [.. found.Select(p => ConcessionRow.Of(p, today, people.GetValueOrDefault(p.Permit.By, Who.Nobody)))];
    }
}
