using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Access;

namespace Traceability.Web.Features.Setup.People;

/// <summary>
/// Without a workshop lead nobody could let anybody in any more, without a quality lead nothing could be decided: the last one keeps the
/// role. Only who holds a PIN counts; somebody whose code was never taken up may never come.
/// </summary>
public sealed class LastOfRole(WorkshopContext db, RecordBook book)
{
    /// <summary>Why the role cannot be taken from that person; null when another holds it. It holds until the end of the command.</summary>
    public async Task<Refusal?> ProblemAsync(Person person, Role role, CancellationToken cancellation)
    {
        if (role is not (Role.Lead or Role.Quality))
        {
            return null;
        }

        // All who ever had it are locked, so that two who take it from each other at one moment do so one after the other.
        var ever = await db.Set<RoleGrant>().Where(g => g.Role == role).Select(g => g.PersonId).Distinct().ToListAsync(cancellation);
        await book.LockAsync(ever.Append(person.Id), cancellation);
        var holders = await PinCredential
            .WithPin(db)
            .Where(p =>
                db.Set<RoleGrant>()
                    .Where(g => g.PersonId == p.Id && g.Role == role)
                    .OrderByDescending(g => g.RecordedAt)
                    .Select(g => (bool?)g.Given)
                    .FirstOrDefault() == true
            )
            .Select(p => p.Id)
            .ToListAsync(cancellation);
        return holders.Any(h => h != person.Id)
            ? null
            : Refusal.Conflict(
                role == Role.Lead ? SetupSentences.IsTheOnlyLead(person.Name) : SetupSentences.IsTheOnlyQualityLead(person.Name)
            );
    }

    /// <summary>Whether the person holds the role.</summary>
    public Task<bool> HoldsAsync(Person person, Role role, CancellationToken cancellation) =>
        db.Set<RoleGrant>()
            .Where(g => g.PersonId == person.Id && g.Role == role)
            .OrderByDescending(g => g.RecordedAt)
            .Select(g => g.Given)
            .FirstOrDefaultAsync(cancellation);
}
