using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Comparison;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>Two revisions of one route side by side.</summary>
public sealed class CompareRevisions(WorkshopContext db, RouteShelf routes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/routes/{model}/{kind}/comparison", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(Subjects.Routes, "compareRevisions", "Everything in which two revisions of a route differ.");

    /// <summary>One thing in which they differ; null on the side that does not say it.</summary>
    public sealed record LineAnswer(RouteAspect About, string Item, string Field, string? Left, string? Right, Difference Difference);

    /// <summary>
    /// A stage that differs. <c>FollowsLeft</c> and <c>FollowsRight</c> name the stage before it among those that both have, when it was
    /// moved.
    /// </summary>
    public sealed record StageAnswer(
        string Code,
        string Title,
        Difference Difference,
        bool Moved,
        string? FollowsLeft,
        string? FollowsRight,
        IReadOnlyList<LineAnswer> Lines
    );

    /// <summary>Everything in which the two differ.</summary>
    public sealed record Output(
        string Model,
        string Kind,
        int Left,
        int Right,
        bool Differs,
        IReadOnlyList<LineAnswer> Head,
        IReadOnlyList<StageAnswer> Stages
    );

    public static async Task<Results<Ok<Output>, Problem>> HandleAsync(
        string model,
        string kind,
        [FromQuery] int left,
        [FromQuery] int right,
        CompareRevisions use,
        CancellationToken cancellation
    )
    {
        var (compared, missing) = await use.RunAsync(model, kind, left, right, cancellation);
        return missing is not null
            ? ProblemAnswers.From(missing)
            : TypedResults.Ok(
                new Output(
                    model,
                    kind,
                    left,
                    right,
                    compared!.Differs,
                    Lines(compared.Head),
                    [
                        .. compared
                            .Stages.Where(s => s.Differs)
                            .Select(s => new StageAnswer(
                                s.Code,
                                (s.Right ?? s.Left)!.Title,
                                s.Difference,
                                s.Moved,
                                s.Moved ? s.LeftAfter : null,
                                s.Moved ? s.RightAfter : null,
                                Lines(s.Lines)
                            )),
                    ]
                )
            );
    }

    /// <summary>The comparison, or which of the two is not there.</summary>
    public async Task<(RouteComparison? Compared, Refusal? Missing)> RunAsync(
        string model,
        string kind,
        int left,
        int right,
        CancellationToken cancellation
    )
    {
        var ids = await db.Set<RouteRevision>()
            .Where(r => r.Model == model && r.Kind == kind && (r.Revision == left || r.Revision == right))
            .ToDictionaryAsync(r => r.Revision, r => r.Id, cancellation);
        foreach (var revision in new[] { left, right }.Where(r => !ids.ContainsKey(r)))
        {
            return (null, Refusal.NotFound(SetupSentences.ThereIsNoRevision(revision, kind, model)));
        }

        return (
            RouteComparison.Of(await routes.GetAsync(db, ids[left], cancellation), await routes.GetAsync(db, ids[right], cancellation)),
            null
        );
    }

    private static LineAnswer[] Lines(IEnumerable<ComparedLine> lines) =>
        [
            .. lines
                .Where(l => l.Difference != Difference.Same)
                .Select(l => new LineAnswer(l.Aspect, l.Item, l.Field, l.Left, l.Right, l.Difference)),
        ];
}
