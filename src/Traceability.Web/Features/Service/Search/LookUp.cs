using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Codes;
using Traceability.Domain.Gates;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Service.Search;

/// <summary>Something found: what it is, its code, and the serial of the part that it leads to, where there is one.</summary>
/// <param name="What" example="part">What it is: <c>part</c>, <c>carrier</c>, <c>certificate</c>, <c>lot</c> or <c>reference</c>.</param>
/// <param name="Code" example="US-0034">What it is called.</param>
/// <param name="Words" example="unit, TARN-2, shipped">What it is, in words.</param>
/// <param name="Serial" example="US-0034">The part that it leads to; null for a lot.</param>
public sealed record Found(
    [property: OneOf("Sought", "part", "carrier", "certificate", "lot", "reference")] string What,
    string Code,
    string Words,
    string? Serial
);

/// <summary>
/// What the look-up box says: hits, that they are only one character away from what was asked, or why it cannot be looked for.
/// </summary>
public sealed record LookedUp(string Asked, IReadOnlyList<Found> Hits, bool Mistaken, Refusal? Refusal);

/// <summary>
/// The one look-up box: serials, carriers, lot numbers of ours and of suppliers, numbers of certificates, customer references; typed,
/// misheard, in part, or scanned from a label or a certificate. What everybody may ask of it here is the same in the box and by the
/// interface.
/// </summary>
public sealed class LookUp(SearchQuery query, PartsNow now) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/search", HandleAsync)
            .Is(Subjects.Returns, "lookUp", "Look up by a fragment of a serial, lot, carrier or customer reference.");

    private const int Longest = 100;

    /// <param name="q" example="0034">What to look for, at most 100 characters.</param>
    public static async Task<Results<JsonOrCsv<Page<Found>>, Problem>> HandleAsync(
        LookUp use,
        HttpContext http,
        PageRequest page,
        CancellationToken cancellation,
        string? q = null
    )
    {
        var answer = await use.RunAsync(q ?? "", cancellation);
        return answer.Refusal is { } refusal
            ? ProblemAnswers.From(refusal)
            : JsonOrCsv.Of(page.Part(answer.Hits, f => $"{f.What}/{f.Code}/{f.Serial}/{f.Words}"));
    }

    /// <summary>At most a hundred hits: what is called so first, units before everything else.</summary>
    public async Task<LookedUp> RunAsync(string text, CancellationToken cancellation)
    {
        var asked = text.Trim();
        if (asked.Length is 0 or > Longest || asked.Contains('\0', StringComparison.Ordinal))
        {
            return new(asked, [], false, Refusal.Invalid("q", ServiceSentences.SayWhatToLookFor(Longest)));
        }

        switch (PrintedCode.Read(asked))
        {
            case CodeReading.Good { Code.Id: var id }:
                asked = id;
                break;
            case CodeReading.WrongCheck:
                return new(asked, [], false, Refusal.Invalid("q", ServiceSentences.CodeWasMisread));
        }

        var hits = await query.RunAsync(asked, cancellation);
        return new(asked, await SaidAsync(hits, cancellation), hits.Mistaken, null);
    }

    /// <summary>True when a hit is called what was asked, however that was written.</summary>
    public static bool IsCalled(Found hit, string asked) =>
        hit.What == "certificate" ? CertificateNumber.In(asked) == hit.Code : CodeLikeness.Apart(asked, hit.Code) == 0;

    private async Task<IReadOnlyList<Found>> SaidAsync(SearchHits hits, CancellationToken cancellation)
    {
        var standings = await now.OfAsync(hits.Parts.Select(p => p.Id), cancellation);
        return
        [
            .. hits
                .Parts.Select(p => Of(p, Words.Of(standings[p.Id].Standing.Code)))
                .Concat(
                    hits.Certificates.Select(c => new Found(
                        "certificate",
                        c.PublicId,
                        ServiceSentences.CertificateOf(c.Revision, c.Model, c.Serial, $"{c.At.UtcDateTime:d MMM yyyy}"),
                        c.Serial
                    ))
                )
                .Concat(
                    hits.Lots.Select(l => new Found(
                        "lot",
                        l.Number,
                        ServiceSentences.LotOfSupplier(l.Kind, l.Supplier, l.SupplierLot),
                        null
                    ))
                )
                .Concat(
                    hits.References.Select(r => new Found(
                        "reference",
                        r.Reference,
                        $"{r.Model} {r.Serial}, {(r.Shipped ? "shipped" : "returned")} {r.At.UtcDateTime:d MMM yyyy}",
                        r.Serial
                    ))
                )
                .Take(SearchQuery.Most),
        ];
    }

    private static Found Of(PartHit hit, string standing) =>
        new(hit.Carrier is null ? "part" : "carrier", hit.Carrier ?? hit.Serial, $"{hit.Kind}, {hit.Model}, {standing}", hit.Serial);
}
