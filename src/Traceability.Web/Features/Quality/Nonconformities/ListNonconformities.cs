using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Nonconformities;

/// <summary>A nonconformity with its decision, if there is one.</summary>
/// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c02">The nonconformity's id.</param>
/// <param name="Serial" example="DS-0107">The part's serial.</param>
/// <param name="Kind" example="diaphragm">What kind of part it is.</param>
/// <param name="Model" example="TARN-1">Its model.</param>
/// <param name="Stage" example="ring-resonance">The stage that it was found at; null when it was reported by hand outside one.</param>
/// <param name="Attempt" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c03">
/// The attempt that it was found in; null when it was reported by hand.
/// </param>
/// <param name="Code" example="stage-failed">What kind of nonconformity it is.</param>
/// <param name="Description" example="Resonance 1121 Hz, below 1128 Hz">What was found.</param>
/// <param name="RaisedAt" example="2026-10-02T09:20:00Z">When it was raised.</param>
/// <param name="RaisedBy">Who raised it.</param>
/// <param name="Open" example="true">False once it is decided, or once a corrected reading has answered it.</param>
/// <param name="Disposition" example="rework">What was decided; null while nothing is.</param>
/// <param name="ReturnTo" example="coarse-tune">The stage that the part goes back to.</param>
/// <param name="LimitedTo" example="US-0034">What a concession is limited to.</param>
/// <param name="Reason" example="tension can be corrected">Why it was decided so.</param>
/// <param name="DecidedAt" example="2026-10-02T11:00:00Z">When it was decided.</param>
/// <param name="DecidedBy">Who decided it.</param>
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

    /// <param name="open" example="true">Only those that wait for a decision, or only those that do not; all when it is left out.</param>
    public static async Task<JsonOrCsv<Page<NonconformityRow>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListNonconformities use,
        CancellationToken cancellation,
        bool? open = null
    ) => JsonOrCsv.Of(await use.RunAsync(open, null, page, cancellation));

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
