using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Setup.TakingBack;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Carriers;

/// <summary>
/// Makes jigs, trays or tins known before they are first used, so that their labels can be printed: one, or several numbered on from the
/// first. A carrier that is scanned unknown is still made known by its first use.
/// </summary>
public sealed partial class AddCarriers(WorkshopContext db, FindThing things, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/carriers", HandleAsync)
            .For(Role.Lead, Role.Builder)
            .Is(Subjects.Stations, "addCarriers", "Add a jig, tray or tin, or several numbered on from the first.");

    private const int Most = 200;

    /// <summary>New carriers.</summary>
    /// <param name="Code" example="JIG-07">The code of the first: capital letters, digits and hyphens.</param>
    /// <param name="Kind" example="jig">What they are, in small letters, digits and hyphens; carrier, when left out.</param>
    /// <param name="Count" example="1">How many, 1 to 200; more than one needs a code that ends in a number.</param>
    public sealed record Input(string Code, string? Kind = null, int Count = 1);

    /// <summary>What is known now.</summary>
    /// <param name="Codes">The codes, in the order of their numbers.</param>
    public sealed record Output(IReadOnlyList<string> Codes);

    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(Input input, SignedIn signedIn, AddCarriers use, Writes writes) =>
        writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor.PersonId, cancellation));

    public async Task<Answer<Output>> RunAsync(Input input, Guid by, CancellationToken cancellation)
    {
        if (!CodeText.TryRead(input.Code, SetupSentences.CarrierCode, out var first, out var bad))
        {
            return Refusal.Invalid("code", bad);
        }

        var kind = string.IsNullOrWhiteSpace(input.Kind) ? "carrier" : input.Kind.Trim();
        if (!KindPattern().IsMatch(kind))
        {
            return Refusal.Invalid("kind", SetupSentences.KindOfCarrierIsSmallLetters);
        }

        if (input.Count is < 1 or > Most)
        {
            return Refusal.Invalid("count", SetupSentences.CountOfCarriers(Most));
        }

        if (CodesFrom(first, input.Count) is not { } codes)
        {
            return Refusal.Invalid("code", SetupSentences.CodeEndsInANumber);
        }

        if (
            await db.Set<Carrier>().Where(c => codes.Contains(c.Code)).Select(c => c.Code).Order().ToListAsync(cancellation)
            is [var taken, ..]
        )
        {
            var why = (await things.RunAsync(SetupSort.Carrier, taken, null, cancellation)).Thing?.TakenWords;
            return Refusal.Conflict(why ?? SetupSentences.ThereIsACarrierAlready(taken), RefusalCode.AlreadyExists);
        }

        var stamp = writes.Stamp(by);
        await writes.Book.AppendAsync(
            "add-carrier",
            [
                .. codes
                    .Select(code => new Carrier(stamp.NewId(), code, kind, stamp.By, stamp.OccurredAt, stamp.RecordedAt))
                    .Select(c => (c.Id, (Fact)c)),
            ],
            cancellation
        );
        return Answer.Created(new Output(codes));
    }

    /// <summary>JIG-07, JIG-08, JIG-09 ...; null when there are to be several and the first does not end in a number.</summary>
    public static IReadOnlyList<string>? CodesFrom(string first, int count)
    {
        if (count == 1)
        {
            return [first];
        }

        var digits = EndingDigits().Match(first).Value;
        if (!int.TryParse(digits, CultureInfo.InvariantCulture, out var number))
        {
            return null;
        }

        var stem = first[..^digits.Length];
        return
        [
            .. Enumerable.Range(number, count).Select(n => stem + n.ToString(CultureInfo.InvariantCulture).PadLeft(digits.Length, '0')),
        ];
    }

    [GeneratedRegex("[0-9]{1,9}$")]
    private static partial Regex EndingDigits();

    [GeneratedRegex("^[a-z][a-z0-9-]{1,39}$")]
    private static partial Regex KindPattern();
}
