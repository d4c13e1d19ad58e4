using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>Reads the rows of one statement with numbered parameters.</summary>
internal static class SqlRows
{
    /// <summary>Runs the statement and makes each row into a value; null parameters need a cast in the statement.</summary>
    public static async Task<IReadOnlyList<T>> RowsAsync<T>(
        this WorkshopContext db,
        string sql,
        IReadOnlyList<object?> parameters,
        Func<NpgsqlDataReader, T> row,
        CancellationToken cancellation
    )
    {
        await db.Database.OpenConnectionAsync(cancellation);
        try
        {
            await using var command = new NpgsqlCommand(
                sql,
                (NpgsqlConnection)db.Database.GetDbConnection(),
                (NpgsqlTransaction?)db.Database.CurrentTransaction?.GetDbTransaction()
            );
            foreach (var value in parameters)
            {
                command.Parameters.Add(new() { Value = value ?? DBNull.Value });
            }

            var rows = new List<T>();
            await using var reader = await command.ExecuteReaderAsync(cancellation);
            while (await reader.ReadAsync(cancellation))
            {
                rows.Add(row(reader));
            }

            return rows;
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }

    /// <summary>A text that may be null.</summary>
    public static string? Text(this NpgsqlDataReader reader, int column) => reader.IsDBNull(column) ? null : reader.GetString(column);

    /// <summary>A moment that may be null.</summary>
    public static DateTimeOffset? Moment(this NpgsqlDataReader reader, int column) =>
        reader.IsDBNull(column) ? null : reader.GetFieldValue<DateTimeOffset>(column);

    /// <summary>A number that may be null.</summary>
    public static decimal? Number(this NpgsqlDataReader reader, int column) => reader.IsDBNull(column) ? null : reader.GetDecimal(column);
}
