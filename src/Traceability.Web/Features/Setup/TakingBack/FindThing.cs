using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>Finds what a decision is about, however its code was typed.</summary>
public sealed class FindThing(WorkshopContext db)
{
    /// <summary>The thing, or why it is not found.</summary>
    public async Task<(SetupThing? Thing, Refusal? Refusal)> RunAsync(
        SetupSort sort,
        string code,
        string? of,
        CancellationToken cancellation
    )
    {
        var known = sort is SetupSort.Kind ? code.Trim() : code.Trim().ToUpperInvariant();
        var id = sort switch
        {
            SetupSort.Station => await IdAsync(db.Set<Domain.Records.Station>().Where(s => s.Code == known), cancellation),
            SetupSort.Instrument => await IdAsync(db.Set<Instrument>().Where(i => i.Code == known), cancellation),
            SetupSort.Lot => await IdAsync(db.Set<Lot>().Where(l => l.Number == known), cancellation),
            SetupSort.Carrier => await IdAsync(db.Set<Carrier>().Where(c => c.Code == known), cancellation),
            SetupSort.Person => await IdAsync(db.Set<Person>().Where(p => p.Badge == known), cancellation),
            SetupSort.Model => await db.Set<RouteRevision>().AnyAsync(r => r.Model == known, cancellation)
                ? NamedSubject.Of(SetupSort.Model, known)
                : null,
            _ => null,
        };
        return id is { } found
            ? (new SetupThing(sort, found, known, await db.DecisionAsync(found, cancellation)), null)
            : (null, Refusal.NotFound(TakingBackSentences.ThereIsNone(SetupThing.NameOf(sort, code))));
    }

    private static async Task<Guid?> IdAsync<T>(IQueryable<T> rows, CancellationToken cancellation)
        where T : Fact => await rows.Select(r => (Guid?)r.Id).FirstOrDefaultAsync(cancellation);
}
