using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.WhereUsed;

/// <summary>A part that contains a lot, or did.</summary>
/// <param name="Serial" example="CS-0051">The part's serial.</param>
/// <param name="Kind" example="capsule">What kind of part it is.</param>
/// <param name="Model" example="TARN-1">Its model.</param>
/// <param name="State" example="fitted">What it is now.</param>
/// <param name="Present" example="true">True while the lot is in it; asked for a moment, true for all.</param>
/// <param name="Times" example="2">How often the lot is in it.</param>
/// <param name="From" example="2026-09-28T08:30:00Z">Since when.</param>
/// <param name="Until" example="2026-10-20T10:00:00Z">Until when; null while it is in it.</param>
/// <param name="FittedIn" example="US-0034">The part that it is fitted in; null when it lies alone.</param>
/// <param name="ShippedAt" example="2026-11-25T15:00:00Z">When it left, by itself or inside a unit; null when it did not.</param>
/// <param name="CustomerReference" example="order 17">To whom it went.</param>
/// <param name="Standing">What it is now, with the reasons.</param>
public sealed record UseOfLot(
    string Serial,
    string Kind,
    string Model,
    [property: OneOf(typeof(PartState))] string State,
    bool Present,
    int Times,
    DateTimeOffset From,
    DateTimeOffset? Until,
    string? FittedIn,
    DateTimeOffset? ShippedAt,
    string? CustomerReference,
    StandingAnswer Standing
);

/// <summary>
/// Every part and unit that contains a lot, at any depth: now with those that it was taken out of, or exactly as it was at a time.
/// </summary>
public sealed class FindUses(WorkshopContext db, PartsNow now) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/lots/{number}/where-used", HandleAsync)
            .For(Role.Quality, Role.Service)
            .Is(Subjects.Tracing, "findUses", "Every part and unit that contains the lot, now or at a time.");

    /// <param name="number" example="F-2603">The lot's number.</param>
    /// <param name="at" example="2026-11-13T16:00:00Z">
    /// What contained it then; now, with what it was taken out of, when it is left out.
    /// </param>
    public static async Task<Results<JsonOrCsv<Page<UseOfLot>>, Problem>> HandleAsync(
        string number,
        HttpContext http,
        PageRequest page,
        FindUses use,
        CancellationToken cancellation,
        DateTimeOffset? at = null
    ) =>
        await use.RunAsync(number, at?.ToUniversalTime(), page, cancellation) is { } uses
            ? JsonOrCsv.Of(uses)
            : ProblemAnswers.From(Refusal.NotFound(QualitySentences.ThereIsNoLot(number)));

    /// <summary>The parts in the order of their making; null when there is no such lot.</summary>
    public async Task<Page<UseOfLot>?> RunAsync(string number, DateTimeOffset? at, PageRequest page, CancellationToken cancellation)
    {
        var code = number.Trim().ToUpperInvariant();
        var lotId = await db.Set<Lot>().Where(l => l.Number == code).Select(l => (Guid?)l.Id).FirstOrDefaultAsync(cancellation);
        if (lotId is null)
        {
            return null;
        }

        var inside = db.Set<Containment>().Where(c => c.ItemId == lotId && c.ItemIsLot);
        if (at is { } moment)
        {
            inside = inside.Where(c => c.PresentFrom <= moment && (c.PresentUntil == null || c.PresentUntil > moment));
        }

        if (page.AfterId is { } after)
        {
            inside = inside.Where(c => c.ContainerId > after);
        }

        var uses = inside
            .GroupBy(c => c.ContainerId)
            .Select(g => new
            {
                PartId = g.Key,
                Present = g.Any(c => c.PresentUntil == null),
                PresentTimes = g.Count(c => c.PresentUntil == null),
                Times = g.Count(),
                From = g.Min(c => c.PresentFrom),
                Until = g.Max(c => c.PresentUntil),
            });
        var rows = await (
            from u in uses
            join p in db.Set<Part>() on u.PartId equals p.Id
            join s in db.Set<PartStanding>() on u.PartId equals s.PartId
            from parent in db.Set<Part>().Where(x => x.Id == s.FittedInId).DefaultIfEmpty()
            orderby u.PartId
            select new
            {
                Use = u,
                Part = p,
                s.State,
                Parent = parent == null ? null : parent.Serial,
            }
        )
            .Take(page.Limit + 1)
            .AsNoTracking()
            .ToListAsync(cancellation);
        var cut = page.Cut(rows, r => r.Use.PartId.ToString());
        var standings = await now.OfAsync(cut.Items.Select(r => r.Use.PartId), cancellation);
        return new(
            [
                .. cut.Items.Select(r =>
                {
                    var present = at is not null || r.Use.Present;
                    var part = standings[r.Use.PartId];
                    return new UseOfLot(
                        r.Part.Serial,
                        r.Part.Kind,
                        r.Part.Model,
                        r.State,
                        present,
                        at is null && present ? r.Use.PresentTimes : r.Use.Times,
                        r.Use.From,
                        present ? null : r.Use.Until,
                        r.Parent,
                        part.Exit.Departure?.At,
                        part.Exit.Departure?.CustomerReference,
                        StandingAnswer.Of(part.Standing)
                    );
                }),
            ],
            cut.Next
        );
    }
}
