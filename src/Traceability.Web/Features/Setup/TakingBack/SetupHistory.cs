using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>One thing that was decided about something of the set-up, or a name of it that was corrected.</summary>
/// <param name="At">When.</param>
/// <param name="State">The word of the state that it has had since; null for a name.</param>
/// <param name="Name">The name that it has had since; null for a decision.</param>
/// <param name="Reason">Why.</param>
/// <param name="By">Who.</param>
public sealed record SetupChange(DateTimeOffset At, string? State, string? Name, string Reason, Who By);

/// <summary>Reads what was decided about something, and what it was called, newest first.</summary>
public sealed class SetupHistory(WorkshopContext db, NameQuery names)
{
    /// <summary>What it was first called, what it is called now, and every change.</summary>
    public async Task<(string First, string Now, IReadOnlyList<SetupChange> Changes)> RunAsync(
        SetupThing thing,
        CancellationToken cancellation
    )
    {
        var id = thing.SubjectId;
        var decisions = await db.Set<SetupDecision>().AsNoTracking().Where(d => d.SubjectId == id).ToListAsync(cancellation);
        var corrections = await db.Set<NameCorrection>().AsNoTracking().Where(c => c.SubjectId == id).ToListAsync(cancellation);
        var people = await names.PeopleAsync(decisions.Select(d => d.By).Concat(corrections.Select(c => c.By)), cancellation);
        Who Name(Guid by) => people.GetValueOrDefault(by, Who.Nobody);
        var first = await TitleAsync(thing, cancellation);
        return (
            first,
            corrections.MaxBy(c => c.RecordedAt)?.Name ?? first,
            [
                .. decisions
                    .Select(d => new SetupChange(d.OccurredAt, SetupDecisions.WordOf(d), null, d.Reason, Name(d.By)))
                    .Concat(corrections.Select(c => new SetupChange(c.OccurredAt, null, c.Name, c.Reason, Name(c.By))))
                    .OrderByDescending(c => c.At),
            ]
        );
    }

    private async Task<string> TitleAsync(SetupThing thing, CancellationToken cancellation)
    {
        var id = thing.SubjectId;
        return thing.Sort switch
        {
            SetupSort.Person => await FirstAsync(db.Set<Person>().Where(p => p.Id == id).Select(p => p.Name), cancellation),
            SetupSort.Station => await FirstAsync(
                db.Set<Domain.Records.Station>().Where(s => s.Id == id).Select(s => s.Title),
                cancellation
            ),
            SetupSort.Instrument => await FirstAsync(db.Set<Instrument>().Where(i => i.Id == id).Select(i => i.Title), cancellation),
            SetupSort.Lot => await FirstAsync(
                db.Set<Lot>().Where(l => l.Id == id).Select(l => l.Kind + ", " + l.Supplier + " " + l.SupplierLot),
                cancellation
            ),
            SetupSort.Carrier => await FirstAsync(db.Set<Carrier>().Where(c => c.Id == id).Select(c => c.Kind), cancellation),
            _ => "",
        };
    }

    private static async Task<string> FirstAsync(IQueryable<string> titles, CancellationToken cancellation) =>
        await titles.FirstOrDefaultAsync(cancellation) ?? "";
}
