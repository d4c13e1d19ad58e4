using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service.Search;

/// <summary>Something found: what it is, its code, and the serial of the part that it leads to, where there is one.</summary>
public sealed record Found(string What, string Code, string Words, string? Serial);

/// <summary>The one look-up box: fragments of serials, lot numbers of ours and of suppliers, carriers, customer references.</summary>
public sealed class LookUp(SearchQuery query, FilmLotStates filmLots)
{
    private const int Longest = 100;

    public static async Task<IResult> HandleAsync(LookUp use, HttpContext http, CancellationToken cancellation, string? q = null) =>
        q?.Trim() is { Length: > 0 and <= Longest } text
            ? Csv.Answer(http, new Page<Found>(await use.RunAsync(text, cancellation), null))
            : ProblemAnswers.From(Refusal.Invalid("q", ServiceSentences.SayWhatToLookFor(Longest)));

    /// <summary>At most a hundred hits: parts first, those that begin with the text before those that only hold it.</summary>
    public async Task<IReadOnlyList<Found>> RunAsync(string text, CancellationToken cancellation)
    {
        var hits = await query.RunAsync(text, cancellation);
        var states = await filmLots.ShownAsync([.. hits.Parts.Select(p => (p.Serial, p.Kind, p.State))], cancellation);
        return
        [
            .. hits.Parts.Select(p => Of(p, states[p.Serial]))
                .Concat(hits.Lots.Select(l => new Found("lot", l.Number, ServiceSentences.LotOfSupplier(l.Kind, l.Supplier, l.SupplierLot), null)))
                .Concat(hits.References.Select(r => new Found("reference", r.Reference, $"{r.Model} {r.Serial}, {(r.Shipped ? "shipped" : "returned")} {r.At.UtcDateTime:d MMM yyyy}", r.Serial)))
                .Take(SearchQuery.Most),
        ];
    }

    private static Found Of(PartHit hit, string state) => new(hit.Carrier is null ? "part" : "carrier", hit.Carrier ?? hit.Serial, $"{hit.Kind}, {hit.Model}, {state}", hit.Serial);
}
