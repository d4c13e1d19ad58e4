using System.Threading.RateLimiting;

namespace Traceability.Web.Features.Access;

/// <summary>
/// Limits how many slow hashes are computed at once: four, with a hundred waiting, none of them for longer than ten seconds. Whoever gets
/// no permit is told to come again, before anything was asked of the database.
/// </summary>
public sealed class PinHashLimiter : IAsyncDisposable
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(10);

    private readonly ConcurrencyLimiter permits = new(
        new()
        {
            PermitLimit = 4,
            QueueLimit = 100,
            QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
        }
    );

    /// <summary>A permit, to be disposed of; null when there is none.</summary>
    public async Task<IDisposable?> AcquireAsync(CancellationToken cancellation)
    {
        using var timeout = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        timeout.CancelAfter(LongestWait);
        try
        {
            var permit = await permits.AcquireAsync(1, timeout.Token);
            return permit.IsAcquired ? permit : null;
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return null;
        }
    }

    public ValueTask DisposeAsync() => permits.DisposeAsync();
}
