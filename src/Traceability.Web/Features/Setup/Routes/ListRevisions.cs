using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>
/// A revision with where it stands (<c>proposed</c>, <c>waiting</c> for its day, <c>current</c>, <c>superseded</c>, <c>rejected</c>,
/// <c>withdrawn</c>) and how many parts
/// are on it.
/// </summary>
/// <param name="Model" example="TARN-2">The model of its parts.</param>
/// <param name="Kind" example="capsule">The kind of its parts.</param>
/// <param name="Revision" example="3">Its number, from 1.</param>
/// <param name="State" example="current">Where it stands.</param>
/// <param name="EffectiveFrom" example="2026-02-01">The first day on which new parts take it.</param>
/// <param name="Author" example="LEAD1">Badge of who wrote it.</param>
/// <param name="ApprovedBy" example="QUAL1">Badge of who approved it; null for a proposal.</param>
/// <param name="ApprovalReason" example="limits as agreed">Why.</param>
/// <param name="ApprovedAt" example="2026-01-31T14:20:00Z">When.</param>
/// <param name="PartsInWork" example="12">How many parts on it are in work.</param>
/// <param name="PartsFinished" example="40">How many are finished.</param>
/// <param name="PartsScrapped" example="2">How many were scrapped.</param>
/// <param name="EndedBy" example="QUAL1">Badge of who rejected or withdrew it; null otherwise.</param>
/// <param name="EndReason" example="limit too wide">Why.</param>
public sealed record RevisionRow(
    string Model,
    string Kind,
    int Revision,
    [property: OneOf("RevisionState", "proposed", "waiting", "current", "superseded", "rejected", "withdrawn")] string State,
    DateOnly EffectiveFrom,
    string Author,
    string? ApprovedBy,
    string? ApprovalReason,
    DateTimeOffset? ApprovedAt,
    int PartsInWork,
    int PartsFinished,
    int PartsScrapped,
    string? EndedBy,
    string? EndReason
);

/// <summary>Every revision of every route, in force or not.</summary>
public sealed class ListRevisions(RouteStandingQuery query, WorkshopCalendar calendar, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/routes/revisions", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(
                Subjects.Routes,
                "listRevisions",
                "Every revision of every route: proposed, waiting, current or superseded, with the parts that are on it."
            );

    /// <param name="model" example="TARN-2">Only revisions of this model.</param>
    /// <param name="kind" example="capsule">Only revisions for this kind of part.</param>
    public static async Task<Results<JsonOrCsv<Page<RevisionRow>>, Problem>> HandleAsync(
        HttpContext http,
        PageRequest page,
        [FromQuery] string? model,
        [FromQuery] string? kind,
        ListRevisions use,
        KindsOfRoutes kinds,
        CancellationToken cancellation
    ) =>
        (await kinds.ModelAsync(model, cancellation) ?? await kinds.PartAsync(kind, cancellation)) is { } refusal
            ? ProblemAnswers.From(refusal)
            : JsonOrCsv.Of(page.Part(await use.RunAsync(model, kind, cancellation), r => $"{r.Model}/{r.Kind}/{r.Revision}"));

    /// <summary>The revisions of a model and kind, or of all, the latest first within each.</summary>
    public async Task<IReadOnlyList<RevisionRow>> RunAsync(string? model, string? kind, CancellationToken cancellation)
    {
        var today = calendar.DayOf(writes.Now);
        return [.. (await query.FindAsync(model, kind, cancellation)).GroupBy(r => (r.Model, r.Kind)).SelectMany(g => Rows([.. g], today))];
    }

    private static IEnumerable<RevisionRow> Rows(IReadOnlyList<RouteStanding> revisions, DateOnly today)
    {
        var approved = revisions.Where(r => r.Approved).ToList();
        var latest = approved.Count > 0 ? approved.Max(r => r.Revision) : 0;
        var current = approved.Where(r => r.EffectiveFrom <= today).Select(r => r.Revision).DefaultIfEmpty(0).Max();
        return revisions.Select(r => new RevisionRow(
            r.Model,
            r.Kind,
            r.Revision,
            r.Ended is { } ended ? ended.ToString().ToLowerInvariant()
                : r.Revision == current ? "current"
                : !r.Approved && r.Revision > latest ? "proposed"
                : r.Approved && r.Revision > current ? "waiting"
                : "superseded",
            r.EffectiveFrom,
            r.Author,
            r.Approved ? r.ApprovedBy : null,
            r.Reason,
            r.ApprovedAt,
            r.InWork,
            r.Finished,
            r.Scrapped,
            r.EndedBy,
            r.EndReason
        ));
    }
}
