using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Comparison;
using Traceability.Domain.Work;
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
    /// <param name="About">What of the stage or route it is about.</param>
    /// <param name="Item" example="ringHz">Which of several.</param>
    /// <param name="Field" example="lower">What of it.</param>
    /// <param name="Left" example="880">What the left revision says.</param>
    /// <param name="Right" example="885">What the right revision says.</param>
    /// <param name="Difference">How they differ.</param>
    public sealed record LineDifference(RouteAspect About, string Item, string Field, string? Left, string? Right, Difference Difference);

    /// <summary>
    /// A stage that differs. <c>FollowsLeft</c> and <c>FollowsRight</c> name the stage before it among those that both have, when it was
    /// moved.
    /// </summary>
    /// <param name="Code" example="verify">Its code.</param>
    /// <param name="Title" example="Verify">What it is called.</param>
    /// <param name="Difference">How the two differ in it.</param>
    /// <param name="Moved" example="false">True when it stands elsewhere in the order.</param>
    /// <param name="FollowsLeft" example="cure">The stage before it in the left revision.</param>
    /// <param name="FollowsRight" example="mount">The stage before it in the right revision.</param>
    /// <param name="Lines">What differs in it.</param>
    public sealed record StageDifference(
        string Code,
        string Title,
        Difference Difference,
        bool Moved,
        string? FollowsLeft,
        string? FollowsRight,
        IReadOnlyList<LineDifference> Lines
    );

    /// <summary>Everything in which the two differ.</summary>
    /// <param name="Model" example="TARN-2">The model.</param>
    /// <param name="Kind" example="capsule">The kind of part.</param>
    /// <param name="Left" example="2">The revision on the left.</param>
    /// <param name="Right" example="3">The revision on the right.</param>
    /// <param name="Differs" example="true">False when they say the same.</param>
    /// <param name="Head">What differs outside the stages.</param>
    /// <param name="Stages">The stages that differ.</param>
    public sealed record Output(
        string Model,
        string Kind,
        int Left,
        int Right,
        bool Differs,
        IReadOnlyList<LineDifference> Head,
        IReadOnlyList<StageDifference> Stages
    );

    /// <param name="model" example="TARN-2">The model of its parts.</param>
    /// <param name="kind" example="capsule">The kind of its parts.</param>
    /// <param name="left" example="2">The revision on the left.</param>
    /// <param name="right" example="3">The revision on the right.</param>
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
                            .Select(s => new StageDifference(
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

    private static LineDifference[] Lines(IEnumerable<ComparedLine> lines) =>
        [
            .. lines
                .Where(l => l.Difference != Difference.Same)
                .Select(l => new LineDifference(l.Aspect, l.Item, l.Field, l.Left, l.Right, l.Difference)),
        ];
}
