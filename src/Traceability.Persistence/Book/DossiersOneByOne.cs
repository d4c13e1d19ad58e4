using Npgsql;
using Traceability.Domain.Gates;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Book;

/// <summary>
/// Dossiers for what goes through the whole store: a part whose facts cannot be put together any more, because somebody changed them or its
/// route behind the service's back, is named and does not stop the others.
/// </summary>
internal static class DossiersOneByOne
{
    /// <summary>The dossiers of these parts; those that cannot be read are left out and named in <paramref name="differences"/>.</summary>
    public static async Task<IReadOnlyDictionary<Guid, Dossier>> LoadAsync(
        DossierReader dossiers,
        Guid[] ids,
        List<string> differences,
        CancellationToken cancellation
    )
    {
        try
        {
            return await dossiers.LoadAsync(ids, cancellation);
        }
        catch (Exception e) when (IsOfTheFacts(e))
        {
            if (ids is [var id])
            {
                differences.Add($"part {id} cannot be read: {e.Message}");
                return new Dictionary<Guid, Dossier>();
            }
        }

        var loaded = new Dictionary<Guid, Dossier>();
        foreach (var half in ids.Chunk((ids.Length + 1) / 2))
        {
            foreach (var (key, dossier) in await LoadAsync(dossiers, half, differences, cancellation))
            {
                loaded[key] = dossier;
            }
        }

        return loaded;
    }

    /// <summary>
    /// True when what went wrong lies in what is stored; not when the database does not answer, or the command was stopped.
    /// </summary>
    public static bool IsOfTheFacts(Exception e) =>
        e is not (OperationCanceledException or NpgsqlException) && e.InnerException is not NpgsqlException;
}
