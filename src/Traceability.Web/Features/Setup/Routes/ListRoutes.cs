using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>The routes in force, said fully enough that a client that knows nothing else can work by them.</summary>
public sealed class ListRoutes : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/routes", HandleAsync).Is(Subjects.Routes, "listRoutes", "The routes in force, said fully enough to work by.");

    public static async Task<Results<Ok<Page<RouteAnswer>>, Problem>> HandleAsync(
        PageRequest page,
        RouteShelf routes,
        WorkshopContext db,
        WorkshopCalendar calendar,
        Writes writes,
        CancellationToken cancellation
    ) =>
        TypedResults.Ok(
            page.Part(
                [.. (await routes.AllOfferedAsync(db, calendar.DayOf(writes.Now), cancellation)).Select(RouteAnswer.Of)],
                r => $"{r.Model}/{r.Kind}"
            )
        );
}
