using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.People;

/// <summary>
/// Records that something was given to a person or taken. What was before stays in the record. Who loses a role is signed out everywhere.
/// </summary>
public sealed class PersonChange(WorkshopContext db, Writes writes, LastOfRole last, WorkshopCalendar calendar)
{
    /// <summary>Appends one fact about the person.</summary>
    public async Task<Answer<PersonAnswer>> RunAsync(
        string badge,
        string command,
        Func<Guid, Stamp, Fact> fact,
        Guid by,
        CancellationToken cancellation,
        Role? taken = null
    )
    {
        var code = badge.Trim().ToUpperInvariant();
        var person = await db.Set<Person>().AsNoTracking().FirstOrDefaultAsync(p => p.Badge == code, cancellation);
        if (person is null)
        {
            return Refusal.NotFound(SetupSentences.NobodyHasTheBadge(badge));
        }

        if (taken is { } role && await last.HoldsAsync(person, role, cancellation))
        {
            if (await last.ProblemAsync(person, role, cancellation) is { } refusal)
            {
                return refusal;
            }

            await PersonSessions.EndAsync(db, person.Id, cancellation);
        }

        var added = fact(person.Id, writes.Stamp(by));
        await writes.Book.AppendAsync(person.Id, command, [added], cancellation);
        await db.SaveChangesAsync(cancellation);
        return Answer.Ok(PersonAnswer.Of((await ActorQuery.FindAsync(db, person.Id, cancellation))!, calendar.DayOf(writes.Now)));
    }
}
