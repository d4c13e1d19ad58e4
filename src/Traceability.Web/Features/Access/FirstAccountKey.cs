using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Access;

/// <summary>
/// The key to a store that knows nobody who could add anybody. The service prints a link with it; it is good until the first account is
/// made, and the database keeps only its hash.
/// </summary>
public sealed class FirstAccountKey(WorkshopContext db)
{
    private const string Setting = "first-account-key";

    /// <summary>True when nobody is known here yet.</summary>
    public Task<bool> IsNeededAsync(CancellationToken cancellation) => db.Set<Person>().AllAsync(_ => false, cancellation);

    /// <summary>Makes a fresh key; earlier ones are no longer good.</summary>
    public async Task<string> MakeAsync(CancellationToken cancellation)
    {
        var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        // In one statement: two instances may start on an empty store at the same moment.
        var hash = SessionAuthentication.HashOf(key);
        await db.Database.ExecuteSqlAsync(
            $"""
            insert into workshop_settings (name, value) values ({Setting}, {hash})
            on conflict (name) do update set value = excluded.value
            """,
            cancellation
        );
        return key;
    }

    /// <summary>Whether this is the key made last, and it was not used yet.</summary>
    public Task<bool> FitsAsync(string key, CancellationToken cancellation)
    {
        var hash = SessionAuthentication.HashOf(key);
        return db.Set<WorkshopSetting>().AnyAsync(s => s.Name == Setting && s.Value == hash, cancellation);
    }

    /// <summary>Uses the key up, in the transaction of the first account.</summary>
    public Task SpendAsync(CancellationToken cancellation) =>
        db.Set<WorkshopSetting>().Where(s => s.Name == Setting).ExecuteDeleteAsync(cancellation);
}
