using Npgsql;

namespace Traceability.Persistence.Book;

/// <summary>Tells a race that was lost, which is run again, from a fault, which is not.</summary>
internal static class LostRaces
{
    /// <summary>
    /// True when the database let another transaction go first. A unique name or number that is taken now was free when it was looked up:
    /// run again, the command finds it taken and says so.
    /// </summary>
    public static bool Is(Exception? e) =>
        e switch
        {
            null => false,
            PostgresException p => p.SqlState
                is PostgresErrorCodes.SerializationFailure
                    or PostgresErrorCodes.DeadlockDetected
                    or PostgresErrorCodes.UniqueViolation,
            _ => Is(e.InnerException),
        };
}
