using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.Kinds;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>Finds what a decision is about, however its code was typed.</summary>
public sealed class FindThing(WorkshopContext db, KindsQuery kinds)
{
    /// <summary>The thing, or why it is not found.</summary>
    public async Task<(SetupThing? Thing, Refusal? Refusal)> RunAsync(
        SetupSort sort,
        string code,
        string? of,
        CancellationToken cancellation
    )
    {
        if (sort is SetupSort.Kind)
        {
            return await KindAsync(code.Trim(), of, cancellation);
        }

        var known = code.Trim().ToUpperInvariant();
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

    /// <summary>A kind by its code; one that several lists have must be told by its list.</summary>
    private async Task<(SetupThing? Thing, Refusal? Refusal)> KindAsync(string code, string? of, CancellationToken cancellation)
    {
        var lists = new List<KindOf>();
        foreach (var list in Enum.GetValues<KindOf>().Where(l => of is null || KindLists.Read(of) == l))
        {
            if (
                (await kinds.OfAsync(list, cancellation)).Any(k => k.Code == code)
                || await db.Set<WorkshopKind>().AnyAsync(k => k.Of == list && k.Code == code, cancellation)
            )
            {
                lists.Add(list);
            }
        }

        if (lists is not [var only])
        {
            return (
                null,
                lists.Count == 0
                    ? Refusal.NotFound(TakingBackSentences.ThereIsNone(SetupThing.NameOf(SetupSort.Kind, code)))
                    : Refusal.Invalid("of", TakingBackSentences.SayWhichList(code, string.Join(", ", lists.Select(KindLists.WordOf))))
            );
        }

        var id = WorkshopKind.SubjectOf(only, code);
        return (new SetupThing(SetupSort.Kind, id, WorkshopKind.NameOf(only, code), await db.DecisionAsync(id, cancellation)), null);
    }

    private static async Task<Guid?> IdAsync<T>(IQueryable<T> rows, CancellationToken cancellation)
        where T : Fact => await rows.Select(r => (Guid?)r.Id).FirstOrDefaultAsync(cancellation);
}
