namespace Traceability.Web.Hosting;

/// <summary>
/// Whether this version can work on a store: it must know every migration that the store has been through, or it would record into tables
/// that mean something else. What it refuses it leaves as it was.
/// </summary>
public static class StoreVersion
{
    /// <param name="database">The name of the database, for the sentence.</param>
    /// <param name="known">The migrations of this version in their order; there is at least one.</param>
    /// <param name="applied">Those that the store has been through.</param>
    /// <exception cref="StoreVersionException">The store has been through a migration that this version does not know.</exception>
    public static void Check(string database, IReadOnlyList<string> known, IEnumerable<string> applied)
    {
        var unknown = applied.Except(known).Order(StringComparer.Ordinal).ToList();
        if (unknown.Count == 0)
        {
            return;
        }

        // A name begins with the time at which its migration was made.
        throw new StoreVersionException(
            string.CompareOrdinal(unknown[0], known[0]) < 0
                ? $"the store in the database {database} was made by a version before the first release, whose tables this one cannot read;"
                    + " nothing was changed in it. Keep that version to read it, and start this one with a new data folder"
                    + " (TRACEABILITY_DATA) or another database (ConnectionStrings__Traceability)."
                : $"the store in the database {database} was made by a newer version (its migration {unknown[^1]} is unknown to this one);"
                    + " nothing was changed in it. Start that version or a later one, or start this one with a new data folder"
                    + " (TRACEABILITY_DATA) or another database (ConnectionStrings__Traceability)."
        );
    }
}

/// <summary>A store that belongs to another version of the service.</summary>
public sealed class StoreVersionException(string message) : Exception(message);
