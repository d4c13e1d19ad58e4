using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Setup.Routes;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Lists;

/// <summary>Parts by kind, model and state, oldest first; or those that may be fitted.</summary>
public sealed class ListParts(WorkshopContext db, PartsNow now) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts", HandleAsync).Is(Subjects.Parts, "listParts", "Parts by kind, model and state; or those free to be fitted.");

    /// <summary>
    /// What to look for. <c>Free</c>: finished, fitted nowhere, not come back from a customer, and nothing on it or in it is held or open.
    /// <c>Revision</c>: of the route it runs on. <c>Finished</c>: every stage done, or still in work; what was scrapped is neither.
    /// </summary>
    public sealed record Filter(string? Kind, string? Model, string? State, bool? Free, int? Revision = null, bool? Finished = null);

    /// <param name="kind" example="capsule">Only parts of this kind.</param>
    /// <param name="model" example="TARN-1">Only parts of this model.</param>
    /// <param name="state" example="in-work">Only parts in this state.</param>
    /// <param name="free" example="true">
    /// Only parts that may be fitted (finished, fitted nowhere, nothing held or open on them or in them), or only the others.
    /// </param>
    /// <param name="revision" example="2">Only parts on this revision of their route.</param>
    /// <param name="finished" example="false">Only parts with every stage done, or only those in work; scrapped ones are neither.</param>
    public static async Task<Results<JsonOrCsv<Page<PartAnswer>>, Problem>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListParts use,
        KindsOfRoutes kinds,
        CancellationToken cancellation,
        string? kind = null,
        string? model = null,
        string? state = null,
        bool? free = null,
        int? revision = null,
        bool? finished = null
    )
    {
        var refusal =
            state is not null && !States.Contains(state)
                ? Refusal.Invalid("state", PartsSentences.ThereIsNoStateStates(state, string.Join(", ", States)))
                : await kinds.PartAsync(kind, cancellation) ?? await kinds.ModelAsync(model, cancellation);
        return refusal is not null
            ? ProblemAnswers.From(refusal)
            : JsonOrCsv.Of(await use.RunAsync(new(kind, model, state, free, revision, finished), page, cancellation));
    }

    private static readonly IReadOnlyList<string> States = [.. Enum.GetValues<PartState>().Select(Words.Of)];

    public async Task<Page<PartAnswer>> RunAsync(Filter filter, PageRequest page, CancellationToken cancellation)
    {
        var query =
            from p in db.Kept<Part>()
            join s in db.Set<PartStanding>() on p.Id equals s.PartId
            join r in db.Set<RouteRevision>() on p.RouteId equals r.Id
            from parent in db.Set<Part>().Where(x => x.Id == s.FittedInId).DefaultIfEmpty()
            where
                (filter.Kind == null || p.Kind == filter.Kind)
                && (filter.Model == null || p.Model == filter.Model)
                && (filter.State == null || s.State == filter.State)
            select new
            {
                Part = p,
                Standing = s,
                Route = r,
                Parent = parent == null ? null : parent.Serial,
            };
        if (filter.Revision is { } revision)
        {
            query = query.Where(x => x.Route.Revision == revision);
        }

        if (filter.Finished is { } ended)
        {
            var scrapped = Words.Of(PartState.Scrapped);
            query = query.Where(x => x.Standing.Finished == ended && x.Standing.State != scrapped);
        }

        if (filter.Free is { } wanted)
        {
            var finished = Words.Of(PartState.Finished);
            query = query.Where(x =>
                wanted
                == (x.Standing.State == finished && !NotFree.Contains(x.Part.Id) && !db.Set<UnitReturn>().Any(r => r.PartId == x.Part.Id))
            );
        }

        if (page.AfterId is { } after)
        {
            query = query.Where(x => x.Part.Id > after);
        }

        var rows = await query.OrderBy(x => x.Part.Id).Take(page.Limit + 1).ToListAsync(cancellation);
        var cut = page.Cut(rows, x => x.Part.Id.ToString());
        var standings = await now.OfAsync(cut.Items.Select(x => x.Part.Id), cancellation);
        return new(
            [
                .. cut.Items.Select(x => new PartAnswer(
                    x.Part.Serial,
                    x.Part.Kind,
                    x.Part.Model,
                    $"{x.Route.Model}/{x.Route.Kind}/{x.Route.Revision}",
                    x.Standing.Stage,
                    x.Standing.State,
                    x.Standing.CarrierCode,
                    x.Parent,
                    x.Standing.OpenAttemptId,
                    StandingAnswer.Of(standings[x.Part.Id].Standing)
                )),
            ],
            cut.Next
        );
    }

    /// <summary>
    /// Parts that hold something on hold, a lot in quarantine, or a part with an open nonconformity, and film lots that are held or in
    /// quarantine themselves: the same as their standing would say.
    /// </summary>
    private IQueryable<Guid> NotFree
    {
        get
        {
            var nonconforming = Words.Of(PartState.Nonconforming);
            return (
                from c in db.Set<Containment>()
                where
                    c.PresentUntil == null
                    && (
                        db.Set<Hold>()
                            .Any(h => (h.LotId == c.ItemId || h.PartId == c.ItemId) && !db.Set<HoldRelease>().Any(r => r.HoldId == h.Id))
                        || (!c.ItemIsLot && db.Set<PartStanding>().Any(s => s.PartId == c.ItemId && s.State == nonconforming))
                        || (
                            c.ItemIsLot
                            && db.Set<LotDecision>()
                                .Where(d => d.LotId == c.ItemId)
                                .OrderByDescending(d => d.RecordedAt)
                                .Select(d => (LotState?)d.State)
                                .FirstOrDefault() == LotState.Quarantined
                        )
                    )
                select c.ContainerId
            ).Concat(
                from l in db.Set<Lot>()
                where
                    db.Set<Hold>().Any(h => h.LotId == l.Id && !db.Set<HoldRelease>().Any(r => r.HoldId == h.Id))
                    || db.Set<LotDecision>()
                        .Where(d => d.LotId == l.Id)
                        .OrderByDescending(d => d.RecordedAt)
                        .Select(d => (LotState?)d.State)
                        .FirstOrDefault() != LotState.Released
                select l.Id
            );
        }
    }
}
