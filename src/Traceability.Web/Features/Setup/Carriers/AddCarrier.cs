using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Setup.TakingBack;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Carriers;

/// <summary>
/// Makes a jig, tray or tin known before a part lies in it, so that its label can be printed first. One that is first scanned with a part
/// is taken up by that.
/// </summary>
public sealed partial class AddCarrier(FindThing things, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/carriers", HandleAsync).For(Role.Lead).Is(Subjects.Parts, "addCarrier", "Add a carrier: a jig, a tray, a tin.");

    /// <summary>A new carrier.</summary>
    /// <param name="Code" example="JIG-07">Its code, as its label will say it: capital letters, digits and hyphens.</param>
    /// <param name="Kind" example="jig">What it is: small letters, digits and hyphens; carrier, when left out.</param>
    public sealed record Input(string Code, string Kind = "carrier");

    /// <summary>A carrier.</summary>
    /// <param name="Code" example="JIG-07">Its code.</param>
    /// <param name="Kind" example="jig">What it is.</param>
    public sealed record Output(string Code, string Kind);

    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(Input input, SignedIn signedIn, AddCarrier use, Writes writes) =>
        writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor.PersonId, cancellation));

    public async Task<Answer<Output>> RunAsync(Input input, Guid by, CancellationToken cancellation)
    {
        if (!CodeText.TryRead(input.Code, SetupSentences.CarrierCode, out var code, out var bad))
        {
            return Refusal.Invalid("code", bad);
        }

        if (!KindPattern().IsMatch(input.Kind))
        {
            return Refusal.Invalid("kind", SetupSentences.KindOfCarrierIsSmallLetters);
        }

        if ((await things.RunAsync(SetupSort.Carrier, code, null, cancellation)).Thing is { } taken)
        {
            return Refusal.Conflict(taken.TakenWords ?? SetupSentences.ThereIsACarrierAlready(code), RefusalCode.AlreadyExists);
        }

        var stamp = writes.Stamp(by);
        var carrier = new Carrier(stamp.NewId(), code, input.Kind, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        await writes.Book.AppendAsync(carrier.Id, "add-carrier", [carrier], cancellation);
        return Answer.Created(new Output(carrier.Code, carrier.Kind));
    }

    [GeneratedRegex("^[a-z][a-z0-9-]{1,39}$")]
    private static partial Regex KindPattern();
}
