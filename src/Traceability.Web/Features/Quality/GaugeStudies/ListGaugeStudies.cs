using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>Gauge repeatability and reproducibility studies, the latest first.</summary>
public sealed class ListGaugeStudies(GaugeStudyReader studies) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/gauge-studies", HandleAsync)
            .Is(Subjects.Studies, "listGaugeStudies", "Gauge repeatability and reproducibility studies.");

    public static async Task<JsonOrCsv<Page<StudyRow>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListGaugeStudies use,
        CancellationToken cancellation
    ) => JsonOrCsv.Of(page.Part(await use.RunAsync(cancellation), s => s.Number));

    /// <summary>All of them, the latest first.</summary>
    public async Task<IReadOnlyList<StudyRow>> RunAsync(CancellationToken cancellation) =>
        [.. (await studies.FindAsync(null, cancellation)).Select(StudyRow.Of)];
}
