using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>
/// A revision with where it stands (<c>proposed</c>, <c>waiting</c> for its day, <c>current</c> or <c>superseded</c>) and how many parts
/// are on it.
/// </summary>
public sealed record RevisionRow(
    string Model,
    string Kind,
    int Revision,
    string State,
    DateOnly EffectiveFrom,
    string Author,
    string? ApprovedBy,
    string? ApprovalReason,
    DateTimeOffset? ApprovedAt,
    int PartsInWork,
    int PartsFinished,
    int PartsScrapped
);

/// <summary>Every revision of every route, in force or not.</summary>
public sealed class RouteRevisions(RouteStandingQuery query, WorkshopCalendar calendar, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/routes/revisions", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(
                Subjects.Routes,
                "listRevisions",
                "Every revision of every route: proposed, waiting, current or superseded, with the parts that are on it."
            );

    public static async Task<Results<Table<Page<RevisionRow>>, Problem>> HandleAsync(
        HttpContext http,
        PageRequest page,
        [FromQuery] string? model,
        [FromQuery] string? kind,
        RouteRevisions use,
        KindsOfRoutes kinds,
        CancellationToken cancellation
    ) =>
        (await kinds.ModelAsync(model, cancellation) ?? await kinds.PartAsync(kind, cancellation)) is { } refusal
            ? ProblemAnswers.From(refusal)
            : Csv.Answer(page.Part(await use.RunAsync(model, kind, cancellation), r => $"{r.Model}/{r.Kind}/{r.Revision}"));

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
            r.Revision == current ? "current"
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
            r.Scrapped
        ));
    }
}
