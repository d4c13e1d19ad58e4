using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Setup;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Access;

/// <summary>
/// An empty store knows nobody who could add anybody. The service prints a link with a key that is good until the first account is made;
/// the database keeps only the key's hash.
/// </summary>
public sealed class FirstAccount(WorkshopContext db, AddPerson addPerson, NewPin newPin, SlowHashes hashes, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/first-account", HandleAsync)
            .AllowAnonymous()
            .KeepsNothing()
            .Is(Subjects.Access, "makeFirstAccount", "Make the first account of an empty store with the key of the printed link.");

    private const string KeySetting = "first-account-key";

    public sealed record Input(string Key, string Badge, string Name, string Pin);

    public static async Task<Results<Recorded<PersonAnswer>, Problem>> HandleAsync(
        Input input,
        FirstAccount use,
        CancellationToken cancellation
    ) => Writes.RecordedAs<PersonAnswer>(await use.RunAsync(input, cancellation));

    /// <summary>True when nobody is known here yet.</summary>
    public Task<bool> IsNeededAsync(CancellationToken cancellation) => db.Set<Person>().AllAsync(_ => false, cancellation);

    /// <summary>Makes a fresh key; earlier ones are no longer good.</summary>
    public async Task<string> MakeKeyAsync(CancellationToken cancellation)
    {
        var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        // In one statement: two instances may start on an empty store at the same moment.
        var hash = SessionAuthentication.HashOf(key);
        await db.Database.ExecuteSqlAsync(
            $"""
            insert into workshop_settings (name, value) values ({KeySetting}, {hash})
            on conflict (name) do update set value = excluded.value
            """,
            cancellation
        );
        return key;
    }

    /// <summary>
    /// Makes the workshop lead's account, once. The slow hash is made before the transaction, and only for whoever has the key.
    /// </summary>
    public async Task<WrittenAnswer> RunAsync(Input input, CancellationToken cancellation)
    {
        if (await ProblemAsync(input, cancellation) is { } problem)
        {
            return Refused(problem);
        }

        using var place = await hashes.EnterAsync(cancellation);
        if (place is null)
        {
            return Refused(Refusal.TooMany(SetupSentences.TooManyAtOnce, TimeSpan.FromSeconds(10)));
        }

        var hash = PinHash.Of(input.Pin);
        return await writes.Book.WriteAsync(
            WriteRequest.Unkeyed,
            JsonRules.Options,
            inside => MakeAsync(input, hash, inside),
            cancellation
        );
    }

    private async Task<Answer<PersonAnswer>> MakeAsync(Input input, string pinHash, CancellationToken cancellation)
    {
        if (await ProblemAsync(input, cancellation) is { } problem)
        {
            return problem;
        }

        await db.Set<WorkshopSetting>().Where(s => s.Name == KeySetting).ExecuteDeleteAsync(cancellation);
        return await addPerson.RunFirstAsync(new(input.Badge, input.Name, [Role.Lead]), pinHash, cancellation);
    }

    private async Task<Refusal?> ProblemAsync(Input input, CancellationToken cancellation)
    {
        if (!await IsNeededAsync(cancellation))
        {
            return Refusal.Conflict(SetupSentences.FirstAccountWasMadeAlready, RefusalCode.AlreadyDone);
        }

        var hash = SessionAuthentication.HashOf(input.Key);
        return await db.Set<WorkshopSetting>().AnyAsync(s => s.Name == KeySetting && s.Value == hash, cancellation)
            ? await newPin.ProblemAsync("pin", input.Pin, cancellation)
            : Refusal.Forbidden(SetupSentences.ThisLinkIsNotTheOne);
    }

    private static WrittenAnswer Refused(Refusal refusal) => new(0, "", refusal, false);
}
