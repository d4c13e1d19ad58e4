using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Something found on a returned unit.</summary>
public sealed record FindingAnswer(Guid Id, string Code, string Description, DateTimeOffset At, Who By);

/// <summary>How a return came out: <c>repaired</c>, <c>no-fault</c>, <c>scrapped</c> or <c>unrepaired</c>.</summary>
public sealed record OutcomeAnswer(ReturnOutcomeKind Kind, string Reason, DateTimeOffset At, Who By);

/// <summary>A return with what was found and done.</summary>
public sealed record ReturnRow(
    Guid Id,
    string Serial,
    string Model,
    string Complaint,
    string? CustomerReference,
    DateTimeOffset ReturnedAt,
    Who ReceivedBy,
    bool Open,
    IReadOnlyList<FindingAnswer> Findings,
    OutcomeAnswer? Outcome,
    string? Action,
    DateTimeOffset? ClosedAt,
    Who? ClosedBy,
    StandingAnswer Standing
);

/// <summary>Returns, the latest first.</summary>
public sealed class ListReturns(WorkshopContext db, NameQuery names, PartsNow now) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/returns", HandleAsync)
            .For(Role.Service, Role.Quality)
            .Is(Subjects.Returns, "listReturns", "Returns, the latest first.");
        api.MapGet("/returns/{id:guid}", OneAsync)
            .For(Role.Service, Role.Quality)
            .Is(Subjects.Returns, "readReturn", "One return with what was found and done.");
    }

    public static async Task<Table<Page<ReturnRow>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListReturns use,
        CancellationToken cancellation,
        bool? open = null
    ) => Csv.Answer(await use.RunAsync(open, page, cancellation));

    public static async Task<Results<Ok<ReturnRow>, Problem>> OneAsync(Guid id, ListReturns use, CancellationToken cancellation) =>
        await use.FindAsync(id, cancellation) is { } found
            ? TypedResults.Ok(found)
            : ProblemAnswers.From(Refusal.NotFound(ServiceSentences.ThereIsNoReturn(id)));

    public async Task<Page<ReturnRow>> RunAsync(bool? open, PageRequest page, CancellationToken cancellation)
    {
        var query = db.Set<UnitReturn>().AsNoTracking();
        if (open is { } wanted)
        {
            query = query.Where(r => wanted != db.Set<ReturnClosing>().Any(c => c.ReturnId == r.Id));
        }

        if (page.AfterId is { } after)
        {
            query = query.Where(r => r.Id < after);
        }

        var cut = page.Cut(await query.OrderByDescending(r => r.Id).Take(page.Limit + 1).ToListAsync(cancellation), r => r.Id.ToString());
        return new(await RowsAsync(cut.Items, cancellation), cut.Next);
    }

    /// <summary>Everything taken back from a moment (included) to a moment (excluded), in the order of coming.</summary>
    public async Task<IReadOnlyList<ReturnRow>> ReceivedAsync(DateTimeOffset from, DateTimeOffset to, CancellationToken cancellation) =>
        await RowsAsync(
            await db.Set<UnitReturn>()
                .AsNoTracking()
                .Where(r => r.OccurredAt >= from && r.OccurredAt < to)
                .OrderBy(r => r.OccurredAt)
                .ThenBy(r => r.Id)
                .ToListAsync(cancellation),
            cancellation
        );

    /// <summary>One return, or null.</summary>
    public async Task<ReturnRow?> FindAsync(Guid id, CancellationToken cancellation) =>
        await RowsAsync(await db.Set<UnitReturn>().AsNoTracking().Where(r => r.Id == id).ToListAsync(cancellation), cancellation)
            is [var found, ..]
            ? found
            : null;

    private async Task<IReadOnlyList<ReturnRow>> RowsAsync(IReadOnlyList<UnitReturn> returns, CancellationToken cancellation)
    {
        var ids = returns.Select(r => r.Id).ToList();
        var findings = (
            await db.Set<ReturnFinding>()
                .AsNoTracking()
                .Where(f => ids.Contains(f.ReturnId))
                .OrderBy(f => f.RecordedAt)
                .ToListAsync(cancellation)
        ).ToLookup(f => f.ReturnId);
        var closings = await db.Set<ReturnClosing>()
            .AsNoTracking()
            .Where(c => ids.Contains(c.ReturnId))
            .ToDictionaryAsync(c => c.ReturnId, cancellation);
        var outcomes = (
            await db.Set<ReturnOutcome>()
                .AsNoTracking()
                .Where(o => ids.Contains(o.ReturnId))
                .OrderBy(o => o.RecordedAt)
                .ToListAsync(cancellation)
        ).ToLookup(o => o.ReturnId);
        var parts = await names.PartsAsync(returns.Select(r => r.PartId), cancellation);
        var standings = await now.OfAsync(returns.Select(r => r.PartId), cancellation);
        var people = await names.PeopleAsync(
            [
                .. returns.Select(r => r.By),
                .. findings.SelectMany(g => g).Select(f => f.By),
                .. outcomes.SelectMany(g => g).Select(o => o.By),
                .. closings.Values.Select(c => c.By),
            ],
            cancellation
        );
        return
        [
            .. returns.Select(r =>
            {
                var closing = closings.GetValueOrDefault(r.Id);
                return new ReturnRow(
                    r.Id,
                    parts[r.PartId].Serial,
                    parts[r.PartId].Model,
                    r.Complaint,
                    r.CustomerReference,
                    r.OccurredAt,
                    Name(r.By),
                    closing is null,
                    [.. findings[r.Id].Select(f => new FindingAnswer(f.Id, f.Code, f.Description, f.OccurredAt, Name(f.By)))],
                    outcomes[r.Id].LastOrDefault() is { } outcome
                        ? new(outcome.Kind, outcome.Reason, outcome.OccurredAt, Name(outcome.By))
                        : null,
                    closing?.Action,
                    closing?.OccurredAt,
                    closing is null ? null : Name(closing.By),
                    StandingAnswer.Of(standings[r.PartId].Standing)
                );
            }),
        ];

        Who Name(Guid id) => people.GetValueOrDefault(id, Who.Nobody);
    }
}
