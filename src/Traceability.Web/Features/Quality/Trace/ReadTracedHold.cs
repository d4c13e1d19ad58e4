using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>One decision that held what a trace found, named by any of its holds.</summary>
public sealed class ReadTracedHold(TracedHoldReader holds) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/trace/holds/{id:guid}", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Tracing, "readTracedHold", "One such decision, named by any of its holds.");

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The id of any of its holds.</param>
    public static async Task<Results<Ok<TracedHold>, Problem>> HandleAsync(Guid id, ReadTracedHold use, CancellationToken cancellation) =>
        await use.RunAsync(id, cancellation) is { } decision
            ? TypedResults.Ok(decision)
            : ProblemAnswers.From(TracedHoldReader.Unknown(id));

    /// <summary>The decision to which a hold belongs; null when there is no such hold, or when it came of no trace.</summary>
    public async Task<TracedHold?> RunAsync(Guid holdId, CancellationToken cancellation) =>
        await holds.FindAsync(holdId, cancellation) is { } decision ? (await holds.DescribeAsync([decision], cancellation))[0] : null;
}
