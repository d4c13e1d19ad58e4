using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>One route in force.</summary>
public sealed class ReadRoute : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/routes/{model}/{kind}", HandleAsync).Is(Subjects.Routes, "readRoute", "One route in force.");

    /// <param name="model" example="TARN-2">The model of its parts.</param>
    /// <param name="kind" example="capsule">The kind of its parts.</param>
    public static async Task<Results<Ok<RouteAnswer>, Problem>> HandleAsync(
        string model,
        string kind,
        RouteShelf routes,
        WorkshopContext db,
        WorkshopCalendar calendar,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await routes.InForceAsync(db, model, kind, calendar.DayOf(writes.Now), cancellation) is var (_, route)
            ? TypedResults.Ok(RouteAnswer.Of(route))
            : ProblemAnswers.From(
                Refusal.NotFound(
                    await RouteShelf.FirstDayAsync(db, model, kind, cancellation) is { } first
                        ? SetupSentences.RouteIsNotInForceYet(kind, model, WorkshopCalendar.Say(first))
                        : SetupSentences.ThereIsNoRouteForKind(kind, model)
                )
            );
}
