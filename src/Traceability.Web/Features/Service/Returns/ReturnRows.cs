using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Reads what was found and done on returns.</summary>
public sealed class ReturnRows(WorkshopContext db, NameQuery names, PartsNow now)
{
    /// <summary>The returns with everything about them, in the order given.</summary>
    public async Task<IReadOnlyList<ReturnRow>> OfAsync(IReadOnlyList<UnitReturn> returns, CancellationToken cancellation)
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
