using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
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
/// Ends a person's access, or gives it back. What the person did stays in the record under the person's name; the last workshop lead and
/// the last quality lead keep theirs.
/// </summary>
public sealed class PersonActivity(WorkshopContext db, Writes writes, LastOfRole last, WorkshopCalendar calendar)
{
    private const int LongestReason = 400;

    /// <summary>Records it with the reason; whoever is deactivated is signed out everywhere at once.</summary>
    public async Task<Answer<PersonAnswer>> RunAsync(
        string badge,
        SetupState state,
        string reason,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (string.IsNullOrWhiteSpace(reason) || reason.Length > LongestReason)
        {
            return Refusal.Invalid("reason", SetupSentences.SayWhyAccessIsChanged);
        }

        var known = PinProof.BadgeOf(badge);
        if (await db.Set<Person>().AsNoTracking().FirstOrDefaultAsync(p => p.Badge == known, cancellation) is not { } person)
        {
            return Refusal.NotFound(SetupSentences.NobodyHasTheBadge(badge));
        }

        await writes.Book.LockAsync(person.Id, cancellation);
        if (await ProblemAsync(person, state, actor, cancellation) is { } problem)
        {
            return problem;
        }

        var stamp = writes.Stamp(actor.PersonId);
        var decision = new SetupDecision(
            stamp.NewId(),
            person.Id,
            SetupSort.Person,
            person.Badge,
            state,
            reason.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        await writes.Book.AppendAsync(
            person.Id,
            state == SetupState.InUse ? "reactivate-person" : "deactivate-person",
            [decision],
            cancellation
        );
        if (state != SetupState.InUse)
        {
            await PersonSessions.EndAsync(db, person.Id, cancellation);
        }

        var answer = PersonAnswer.Of((await ActorQuery.FindAsync(db, person.Id, cancellation))!, calendar.DayOf(writes.Now));
        return Answer.Ok(answer with { DeactivatedBecause = state == SetupState.InUse ? null : decision.Reason });
    }

    private async Task<Refusal?> ProblemAsync(Person person, SetupState state, Actor actor, CancellationToken cancellation)
    {
        var now = await db.DecisionAsync(person.Id, cancellation);
        if ((now?.State ?? SetupState.InUse) == state)
        {
            return Refusal.Conflict(
                state == SetupState.InUse
                    ? SetupSentences.PersonIsActiveAlready(person.Name)
                    : SetupSentences.PersonIsDeactivatedAlready(person.Name, now!.Reason),
                RefusalCode.AlreadyDone
            );
        }

        if (state == SetupState.InUse)
        {
            return null;
        }

        foreach (var role in new[] { Role.Lead, Role.Quality })
        {
            if (await last.HoldsAsync(person, role, cancellation) && await last.ProblemAsync(person, role, cancellation) is { } needed)
            {
                return needed;
            }
        }

        return person.Id == actor.PersonId ? Refusal.Conflict(SetupSentences.NobodyDeactivatesThemself) : null;
    }
}
