using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// Sends statements to the database together and waits once, inside the context's transaction when there is one. They run in their order,
/// each seeing what is committed when its turn comes: what follows a lock is read under it.
/// </summary>
internal static class OneRoundTrip
{
    /// <summary>Hands the first answer to <paramref name="read"/>, which moves on to the others by <c>NextResultAsync</c>.</summary>
    public static async Task<T> RunAsync<T>(
        WorkshopContext db,
        IEnumerable<NpgsqlBatchCommand> statements,
        Func<NpgsqlDataReader, Task<T>> read,
        CancellationToken cancellation
    )
    {
        await db.Database.OpenConnectionAsync(cancellation);
        try
        {
            await using var batch = new NpgsqlBatch(
                (NpgsqlConnection)db.Database.GetDbConnection(),
                (NpgsqlTransaction?)db.Database.CurrentTransaction?.GetDbTransaction()
            );
            foreach (var statement in statements)
            {
                batch.BatchCommands.Add(statement);
            }

            await using var reader = await batch.ExecuteReaderAsync(cancellation);
            return await read(reader);
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }
}
