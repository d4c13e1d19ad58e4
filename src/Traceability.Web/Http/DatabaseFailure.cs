using Npgsql;

namespace Traceability.Web.Http;

/// <summary>Tells a database that fails from a program that is wrong: the first passes, and who asked may ask again.</summary>
public static class DatabaseFailure
{
    /// <summary>How long to wait before asking again, in seconds: a restarted server is back by then.</summary>
    public const string RetryAfterSeconds = "5";

    /// <summary>
    /// Classes of SQLSTATE that say something about the server and nothing about the statement: connection, transaction state (a server
    /// that only reads), authorization, catalog name, resources (a full disk), object not in state, operator intervention (shutdown,
    /// time-out), system error, internal error.
    /// </summary>
    private static readonly string[] OfTheServer = ["08", "25", "28", "3D", "53", "55", "57", "58", "XX"];

    /// <summary>
    /// True when the database did not answer, ended the session, or cannot write. EF Core wraps such exceptions in its own.
    /// </summary>
    public static bool Is(Exception? e) =>
        e switch
        {
            null => false,
            PostgresException p => Array.Exists(OfTheServer, c => p.SqlState.StartsWith(c, StringComparison.Ordinal)),
            NpgsqlException => true,
            _ => Is(e.InnerException),
        };

    /// <summary>True when it was refused because nothing can be written: no room, or a server that only reads.</summary>
    public static bool IsOfWriting(Exception? e) =>
        e switch
        {
            null => false,
            PostgresException p => p.SqlState.StartsWith("53", StringComparison.Ordinal)
                || p.SqlState.StartsWith("58", StringComparison.Ordinal)
                || p.SqlState == PostgresErrorCodes.ReadOnlySqlTransaction,
            _ => IsOfWriting(e.InnerException),
        };
}
