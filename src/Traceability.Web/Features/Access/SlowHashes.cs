using System.Threading.RateLimiting;

namespace Traceability.Web.Features.Access;

/// <summary>
/// The places in which slow hashes are made: four at once, a hundred waiting, none of them for longer than ten seconds. Whoever finds no
/// place is told to come again, before anything was asked of the database.
/// </summary>
public sealed class SlowHashes : IAsyncDisposable
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(10);

    private readonly ConcurrencyLimiter places = new(
        new()
        {
            PermitLimit = 4,
            QueueLimit = 100,
            QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
        }
    );

    /// <summary>A place, to be disposed of; null when there is none.</summary>
    public async Task<IDisposable?> EnterAsync(CancellationToken cancellation)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        patience.CancelAfter(LongestWait);
        try
        {
            var place = await places.AcquireAsync(1, patience.Token);
            return place.IsAcquired ? place : null;
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return null;
        }
    }

    public ValueTask DisposeAsync() => places.DisposeAsync();
}
