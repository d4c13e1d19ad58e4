using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.FirstAccount;

/// <summary>
/// An empty store knows nobody who could add anybody. The service prints a link with a key that is good until the first account is made;
/// the database keeps only the key's hash.
/// </summary>
public sealed class FirstAccount(WorkshopContext db, AddPerson addPerson)
{
    private const string KeySetting = "first-account-key";

    public sealed record Input(string Key, string Badge, string Name, string Pin);

    public static Task<IResult> HandleAsync(Input input, FirstAccount use, Writes writes) => writes.RunAsync(cancellation => use.RunAsync(input, cancellation));

    /// <summary>True when nobody is known here yet.</summary>
    public Task<bool> IsNeededAsync(CancellationToken cancellation) => db.Set<Person>().AllAsync(_ => false, cancellation);

    /// <summary>Makes a fresh key; earlier ones are no longer good.</summary>
    public async Task<string> MakeKeyAsync(CancellationToken cancellation)
    {
        var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        // In one statement: two instances may start on an empty store at the same moment.
        var hash = SessionAuthentication.HashOf(key);
        await db.Database.ExecuteSqlAsync($"insert into workshop_settings (name, value) values ({KeySetting}, {hash}) on conflict (name) do update set value = excluded.value", cancellation);
        return key;
    }

    /// <summary>Makes the workshop lead's account, once.</summary>
    public async Task<Answer> RunAsync(Input input, CancellationToken cancellation)
    {
        if (!await IsNeededAsync(cancellation))
        {
            return Refusal.Conflict(SetupSentences.FirstAccountWasMadeAlready, RefusalCode.AlreadyDone);
        }

        var hash = SessionAuthentication.HashOf(input.Key);
        if (!await db.Set<WorkshopSetting>().AnyAsync(s => s.Name == KeySetting && s.Value == hash, cancellation))
        {
            return Refusal.Forbidden(SetupSentences.ThisLinkIsNotTheOne);
        }

        await db.Set<WorkshopSetting>().Where(s => s.Name == KeySetting).ExecuteDeleteAsync(cancellation);
        return await addPerson.RunAsync(new(input.Badge, input.Name, input.Pin, [Role.Lead]), null, cancellation);
    }
}
