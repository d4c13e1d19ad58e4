using Npgsql;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// When the newest entry of the whole ledger was recorded. The ids of entries begin with that time, so the index of the ids knows it.
/// </summary>
public static class NewestEntry
{
    /// <summary>The statement; the record book sends it along with its lock.</summary>
    public const string Sql = "select recorded_at from ledger_entries order by id desc limit 1";

    /// <summary>Null in a store without entries.</summary>
    public static Task<DateTimeOffset?> RecordedAtAsync(WorkshopContext db, CancellationToken cancellation) =>
        OneRoundTrip.RunAsync(db, [new(Sql)], reader => ReadAsync(reader, cancellation), cancellation);

    /// <summary>Reads the answer.</summary>
    internal static async Task<DateTimeOffset?> ReadAsync(NpgsqlDataReader reader, CancellationToken cancellation) =>
        await reader.ReadAsync(cancellation) ? await reader.GetFieldValueAsync<DateTimeOffset>(0, cancellation) : null;
}
