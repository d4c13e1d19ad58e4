using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.Routes;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>Lots by kind and state, newest number last.</summary>
public sealed class ListLots : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/lots", HandleAsync).Is(Subjects.Lots, "listLots", "Lots by kind and state.");

    /// <param name="kind" example="film">Only lots of this kind.</param>
    /// <param name="state" example="released">Only lots that are <c>released</c>, or only <c>quarantined</c> ones.</param>
    /// <param name="retired" example="true">Those that are retired too; without it only what new work may use.</param>
    public static async Task<Results<JsonOrCsv<Page<LotAnswer>>, Problem>> HandleAsync(
        HttpContext http,
        WorkshopContext db,
        LotQuery lots,
        KindsOfRoutes kinds,
        PageRequest page,
        CancellationToken cancellation,
        string? kind = null,
        string? state = null,
        bool retired = false
    )
    {
        if (state is not (null or "released" or "quarantined"))
        {
            return ProblemAnswers.From(Refusal.Invalid("state", SetupSentences.StateIsReleasedOrQuarantined));
        }

        return await kinds.LotAsync("kind", kind, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : JsonOrCsv.Of(await RunAsync(db, lots, kind, state, retired, page, cancellation));
    }

    /// <summary>The lots of a kind and state; all when none is given.</summary>
    public static async Task<Page<LotAnswer>> RunAsync(
        WorkshopContext db,
        LotQuery lots,
        string? kind,
        string? state,
        bool retired,
        PageRequest page,
        CancellationToken cancellation
    )
    {
        var found = await lots.StandingOfAsync(
            Query(db, kind, state, retired, page.After).OrderBy(l => l.Number).Take(page.Limit + 1),
            cancellation
        );
        return page.Cut([.. found.OrderBy(l => l.Lot.Number, StringComparer.Ordinal).Select(LotAnswer.Of)], l => l.Number);
    }

    private static IQueryable<Lot> Query(WorkshopContext db, string? kind, string? state, bool retired, string? after)
    {
        var query = retired ? db.Kept<Lot>() : db.Offered<Lot>();
        if (kind is not null)
        {
            query = query.Where(l => l.Kind == kind);
        }

        if (after is not null)
        {
            query = query.Where(l => EF.Functions.GreaterThan(ValueTuple.Create(l.Number), ValueTuple.Create(after)));
        }

        return state switch
        {
            "released" => query.Where(l =>
                db.Set<LotDecision>()
                    .Where(d => d.LotId == l.Id)
                    .OrderByDescending(d => d.RecordedAt)
                    .Select(d => (LotState?)d.State)
                    .FirstOrDefault() == LotState.Released
            ),
            "quarantined" => query.Where(l =>
                db.Set<LotDecision>()
                    .Where(d => d.LotId == l.Id)
                    .OrderByDescending(d => d.RecordedAt)
                    .Select(d => (LotState?)d.State)
                    .FirstOrDefault() != LotState.Released
                || !db.Set<LotDecision>().Any(d => d.LotId == l.Id)
            ),
            _ => query,
        };
    }
}
