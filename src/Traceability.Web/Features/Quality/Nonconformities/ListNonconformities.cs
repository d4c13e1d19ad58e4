using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Nonconformities;

/// <summary>
/// A nonconformity with its decision, if there is one. It is no longer open once decided, or once a corrected reading has answered it.
/// </summary>
public sealed record NonconformityRow(
    Guid Id,
    string Serial,
    string Kind,
    string Model,
    string? Stage,
    Guid? Attempt,
    string Code,
    string Description,
    DateTimeOffset RaisedAt,
    Who RaisedBy,
    bool Open,
    DispositionKind? Disposition,
    string? ReturnTo,
    string? LimitedTo,
    string? Reason,
    DateTimeOffset? DecidedAt,
    Who? DecidedBy
);

/// <summary>Nonconformities, the latest first.</summary>
public sealed class ListNonconformities(WorkshopContext db, NameQuery names) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/nonconformities", HandleAsync)
            .Is(Subjects.Nonconformities, "listNonconformities", "Nonconformities, the latest first.");

    public static async Task<Table<Page<NonconformityRow>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListNonconformities use,
        CancellationToken cancellation,
        bool? open = null
    ) => Csv.Answer(await use.RunAsync(open, null, page, cancellation));

    /// <summary>Those that are open, or not, or all; of one part, or of all; the latest first, or the oldest.</summary>
    public async Task<Page<NonconformityRow>> RunAsync(
        bool? open,
        Guid? partId,
        PageRequest page,
        CancellationToken cancellation,
        bool oldestFirst = false
    )
    {
        var query =
            from n in db.Set<Nonconformity>()
            join p in db.Set<Part>() on n.PartId equals p.Id
            from d in db.Set<Disposition>().Where(d => d.NonconformityId == n.Id).DefaultIfEmpty()
            where partId == null || n.PartId == partId
            select new
            {
                N = n,
                Part = p,
                D = d,
                Open = d == null && !Answered.Contains(n.Id),
            };
        if (open is { } wanted)
        {
            query = query.Where(x => x.Open == wanted);
        }

        if (page.AfterId is { } after)
        {
            query = oldestFirst ? query.Where(x => x.N.Id > after) : query.Where(x => x.N.Id < after);
        }

        query = oldestFirst ? query.OrderBy(x => x.N.Id) : query.OrderByDescending(x => x.N.Id);
        var rows = page.Cut(await query.Take(page.Limit + 1).ToListAsync(cancellation), x => x.N.Id.ToString());
        var people = await names.PeopleAsync(rows.Items.SelectMany(x => new[] { x.N.By, x.D?.By ?? x.N.By }), cancellation);
        return new(
            [
                .. rows.Items.Select(x => new NonconformityRow(
                    x.N.Id,
                    x.Part.Serial,
                    x.Part.Kind,
                    x.Part.Model,
                    x.N.Stage,
                    x.N.AttemptId,
                    x.N.Code,
                    x.N.Description,
                    x.N.OccurredAt,
                    people.GetValueOrDefault(x.N.By, Who.Nobody),
                    x.Open,
                    x.D?.Kind,
                    x.D?.ReturnTo,
                    x.D?.LimitedTo,
                    x.D?.Reason,
                    x.D?.OccurredAt,
                    x.D is null ? null : people.GetValueOrDefault(x.D.By, Who.Nobody)
                )),
            ],
            rows.Next
        );
    }

    /// <summary>
    /// Those about readings that, as corrected, are all met; the rule of <see cref="Dossier.OpenNonconformities"/> in the database's words.
    /// </summary>
    private IQueryable<Guid> Answered =>
        from n in db.Set<Nonconformity>()
        join e in db.Set<AttemptEnding>() on n.AttemptId equals e.AttemptId
        where
            NonconformityCodes.OfReadings.Contains(n.Code)
            && e.Verdict != null
            && !e.FailedByFinding
            && !db.Set<Reading>()
                .Any(r =>
                    r.AttemptId == e.AttemptId
                    && !(
                        db.Set<Correction>()
                            .Where(c => c.ReadingId == r.Id)
                            .OrderByDescending(c => c.RecordedAt)
                            .ThenByDescending(c => c.Id)
                            .Select(c => (bool?)c.Met)
                            .FirstOrDefault()
                        ?? r.Met
                    )
                )
        select n.Id;
}
