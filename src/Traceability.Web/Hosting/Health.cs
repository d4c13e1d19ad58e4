using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Hosting;

/// <summary>What the service says when it is asked whether it runs.</summary>
/// <param name="Status" example="live">Always <c>live</c>.</param>
public sealed record Live(string Status);

/// <summary>Answers those who watch over the service, before it is ready for anybody else.</summary>
public static class Health
{
    /// <summary>Liveness, and readiness: see <see cref="Readiness"/>.</summary>
    public static void MapHealth(this WebApplication app)
    {
        app.MapGet(Addresses.Health + "/live", LiveAsync).Is(Subjects.Health, "readLiveness", "Does the service run?");
        app.MapGet(Addresses.Health + "/ready", ReadyAsync)
            .Produces<Ready>(StatusCodes.Status503ServiceUnavailable)
            .Is(Subjects.Health, "readReadiness", "Can facts be recorded, and if not, why?");
    }

    private static Ok<Live> LiveAsync() => TypedResults.Ok(new Live("live"));

    private static async Task<Results<Ok<Ready>, JsonHttpResult<Ready>>> ReadyAsync(Readiness readiness, CancellationToken cancellation) =>
        await readiness.AskAsync(cancellation) is var said && said == Ready.Yes
            ? TypedResults.Ok(said)
            : TypedResults.Json(said, statusCode: StatusCodes.Status503ServiceUnavailable);
}
