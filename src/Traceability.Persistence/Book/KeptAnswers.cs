using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Book;

/// <summary>
/// The answers to commands that came with an idempotency key: kept in their transaction, and given again to the same command.
/// </summary>
internal sealed class KeptAnswers(WorkshopContext db, TimeProvider clock)
{
    /// <summary>Keeps the answer with the key; what is shown once is not in it.</summary>
    public void Keep(WriteRequest request, Answer answer, string body)
    {
        if (request.IdempotencyKey is { } key)
        {
            db.Add(
                new IdempotentAnswer(
                    request.Caller,
                    key,
                    request.RequestHash,
                    answer.Status,
                    answer.ShownOnce ? "" : body,
                    clock.GetUtcNow()
                )
            );
        }
    }

    /// <summary>What was answered when the key came before; null when it is new, or the command has none.</summary>
    public async Task<WrittenAnswer?> EarlierAsync(WriteRequest request, CancellationToken cancellation) =>
        request.IdempotencyKey is not { } key
        || await db.Set<IdempotentAnswer>()
            .AsNoTracking()
            .FirstOrDefaultAsync(a => a.Caller == request.Caller && a.Key == key, cancellation)
            is not { } earlier
            ? null
        : earlier.RequestHash != request.RequestHash ? WrittenAnswer.OtherBodyForSameKey
        : earlier.Body == "" ? WrittenAnswer.ShownBefore
        : new(earlier.Status, earlier.Body, null, false) { Replayed = true };
}
