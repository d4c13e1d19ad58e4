using System.Globalization;
using System.Text.RegularExpressions;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;

namespace Traceability.Web.Features.Setup.Carriers;

/// <summary>Adds several carriers in one go, numbered on from the first: JIG-07, JIG-08, JIG-09; all of them or none.</summary>
public sealed partial class CarrierRow(AddCarrier add)
{
    /// <summary>How many at a time.</summary>
    public const int Most = 200;

    /// <summary>What is known now.</summary>
    /// <param name="Codes">The codes, in the order of their numbers.</param>
    public sealed record Output(IReadOnlyList<string> Codes);

    public async Task<Answer<Output>> RunAsync(string first, string? kind, int? count, Guid by, CancellationToken cancellation)
    {
        if (count is not (>= 1 and <= Most))
        {
            return Refusal.Invalid("count", SetupSentences.CountOfCarriers(Most));
        }

        if (CodesFrom(first.Trim(), count.Value) is not { } codes)
        {
            return Refusal.Invalid("code", SetupSentences.CodeEndsInANumber);
        }

        var added = new List<string>();
        foreach (var code in codes)
        {
            var answer = await add.RunAsync(new(code, string.IsNullOrWhiteSpace(kind) ? "carrier" : kind.Trim()), by, cancellation);
            if (answer.Refusal is { } refusal)
            {
                return refusal;
            }

            added.Add(answer.Value!.Code);
        }

        return Answer.Created(new Output(added));
    }

    /// <summary>The codes from the first on; null when there are to be several and the first does not end in a number.</summary>
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
}
