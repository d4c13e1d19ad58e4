using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Web.Features.Quality.Trace;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Doubts;

/// <summary>Everything measured with an instrument since its last good calibration or check, or since a time that is given.</summary>
public sealed class ListAffected(TraceParts trace) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/instruments/{code}/affected", HandleAsync)
            .For(Role.Quality, Role.Service)
            .Is(
                Subjects.Instruments,
                "listAffected",
                "Every part and unit measured with the instrument since its last good calibration or check."
            );

    /// <param name="code" example="CAP-02">The instrument's code.</param>
    /// <param name="since" example="2026-09-21T00:00:00Z">
    /// From when its readings are in doubt; since its last good calibration or check when it is left out.
    /// </param>
    /// <param name="at" example="2026-11-13T16:00:00Z">The list as it was then; as it is now when it is left out.</param>
    public static async Task<Results<JsonOrCsv<TraceParts.Output>, Problem>> HandleAsync(
        string code,
        HttpContext http,
        PageRequest page,
        ListAffected use,
        CancellationToken cancellation,
        DateTimeOffset? since = null,
        DateTimeOffset? at = null
    ) => TraceParts.Answer(await use.RunAsync(code, since, at, page, cancellation));

    /// <summary>The trace of the instrument, or why it cannot be traced.</summary>
    public Task<(TraceParts.Output? Found, Domain.Work.Refusal? Refusal)> RunAsync(
        string code,
        DateTimeOffset? since,
        DateTimeOffset? at,
        PageRequest page,
        CancellationToken cancellation
    ) => trace.RunAsync(new(TraceKind.Instrument, code, since, null, at), page, cancellation);
}
