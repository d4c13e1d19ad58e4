using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// What of the set-up is offered, what is only kept, and what it is called now. Whatever lists or looks up stations, instruments, lots,
/// carriers or people asks here, so that what was taken back is seen nowhere.
/// </summary>
public static class SetupStanding
{
    /// <summary>All but what was entered by mistake.</summary>
    public static IQueryable<T> Kept<T>(this WorkshopContext db)
        where T : Fact =>
        db.Set<T>()
            .Where(f =>
                !db.Set<SetupDecision>()
                    .Any(d =>
                        d.SubjectId == f.Id
                        && d.State == SetupState.Mistake
                        && !db.Set<SetupDecision>().Any(later => later.SubjectId == f.Id && later.RecordedAt > d.RecordedAt)
                    )
            );

    /// <summary>What new work may use.</summary>
    public static IQueryable<T> Offered<T>(this WorkshopContext db)
        where T : Fact =>
        db.Set<T>()
            .Where(f =>
                !db.Set<SetupDecision>()
                    .Any(d =>
                        d.SubjectId == f.Id
                        && d.State != SetupState.InUse
                        && !db.Set<SetupDecision>().Any(later => later.SubjectId == f.Id && later.RecordedAt > d.RecordedAt)
                    )
            );

    /// <summary>The decision that counts about something; null when nothing was ever decided about it.</summary>
    public static Task<SetupDecision?> DecisionAsync(this WorkshopContext db, Guid subjectId, CancellationToken cancellation) =>
        db.Set<SetupDecision>()
            .AsNoTracking()
            .Where(d => d.SubjectId == subjectId)
            .OrderByDescending(d => d.RecordedAt)
            .FirstOrDefaultAsync(cancellation);

    /// <summary>The decisions that count, by subject; of what is in use nothing, whatever was decided before.</summary>
    public static async Task<IReadOnlyDictionary<Guid, SetupDecision>> SetAsideAsync(
        this WorkshopContext db,
        SetupSort sort,
        CancellationToken cancellation
    ) =>
        (await db.Set<SetupDecision>().AsNoTracking().Where(d => d.Sort == sort).ToListAsync(cancellation))
            .GroupBy(d => d.SubjectId)
            .Select(g => g.MaxBy(d => d.RecordedAt)!)
            .Where(d => d.State != SetupState.InUse)
            .ToDictionary(d => d.SubjectId);

    /// <summary>The names that were corrected, as they are now.</summary>
    public static async Task<IReadOnlyDictionary<Guid, string>> CorrectedNamesAsync(
        this WorkshopContext db,
        IEnumerable<Guid> subjectIds,
        CancellationToken cancellation
    )
    {
        var ids = subjectIds.ToList();
        return (await db.Set<NameCorrection>().AsNoTracking().Where(c => ids.Contains(c.SubjectId)).ToListAsync(cancellation))
            .GroupBy(c => c.SubjectId)
            .ToDictionary(g => g.Key, g => g.MaxBy(c => c.RecordedAt)!.Name);
    }
}
