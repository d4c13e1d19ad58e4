using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Makes the account of the workshop lead in a store that knows nobody yet, once, for whoever has the key of the link.</summary>
public sealed class MakeFirstAccount(FirstAccountKey keys, AddPerson addPerson, PinRules pins, PinHashLimiter hashes, Writes writes)
    : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/first-account", HandleAsync)
            .AllowAnonymous()
            .KeepsNothing()
            .Is(Subjects.Access, "makeFirstAccount", "Make the first account of an empty store with the key of the printed link.");

    /// <summary>The first account: that of the workshop lead.</summary>
    /// <param name="Key" example="3f9c0b6d5e7a41c28d90ab12cd34ef56">The key in the link that the service printed.</param>
    /// <param name="Badge" example="LEAD1">The person's badge: capitals, digits and hyphens.</param>
    /// <param name="Name" example="Ottilie Farnhaven">The person's name, up to 120 characters.</param>
    /// <param name="Pin" example="4071">The PIN that the person chooses: 4 to 12 digits.</param>
    public sealed record Input(string Key, string Badge, string Name, string Pin);

    public static async Task<Results<Recorded<PersonAnswer>, Problem>> HandleAsync(
        Input input,
        MakeFirstAccount use,
        CancellationToken cancellation
    ) => Writes.RecordedAs<PersonAnswer>(await use.RunAsync(input, cancellation));

    /// <summary>The slow hash is made before the transaction, and only for whoever has the key.</summary>
    public async Task<WrittenAnswer> RunAsync(Input input, CancellationToken cancellation)
    {
        if (await ProblemAsync(input, cancellation) is { } problem)
        {
            return Refused(problem);
        }

        using var permit = await hashes.AcquireAsync(cancellation);
        if (permit is null)
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

        await keys.SpendAsync(cancellation);
        return await addPerson.RunFirstAsync(new(input.Badge, input.Name, [Role.Lead]), pinHash, cancellation);
    }

    private async Task<Refusal?> ProblemAsync(Input input, CancellationToken cancellation) =>
        !await keys.IsNeededAsync(cancellation) ? Refusal.Conflict(SetupSentences.FirstAccountWasMadeAlready, RefusalCode.AlreadyDone)
        : await keys.FitsAsync(input.Key, cancellation) ? await pins.ProblemAsync("pin", input.Pin, cancellation)
        : Refusal.Forbidden(SetupSentences.ThisLinkIsNotTheOne);

    private static WrittenAnswer Refused(Refusal refusal) => new(0, "", refusal, false);
}
