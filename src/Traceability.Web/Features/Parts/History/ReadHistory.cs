using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.History;

/// <summary>Every fact about a part in the order in which it happened, now or as of a time.</summary>
public sealed class ReadHistory(DossierReader dossiers, ElsewhereQuery elsewhere, NameQuery names) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/history", HandleAsync).Is(Subjects.Parts, "readHistory", "Every fact in order, now or as of a time.");

    /// <summary>The history of a part.</summary>
    /// <param name="Serial" example="US26-00034">The part's serial.</param>
    /// <param name="Kind" example="unit">The kind of part.</param>
    /// <param name="Model" example="TARN-1">The model.</param>
    /// <param name="AsOf" example="2026-11-25T14:20:00Z">The time asked for; null for now.</param>
    /// <param name="Items">What happened, oldest first.</param>
    /// <param name="Next" example="MDE5OWMzZDQ">The cursor of the next page; null on the last.</param>
    public sealed record Output(
        string Serial,
        string Kind,
        string Model,
        DateTimeOffset? AsOf,
        IReadOnlyList<HistoryEntry> Items,
        string? Next
    );

    /// <param name="serial" example="US26-00034">The part's serial, or the carrier that it lies in.</param>
    /// <param name="asOf" example="2026-11-25T14:20:00Z">As of this time; now, when it is left out.</param>
    public static async Task<Results<JsonOrCsv<Output>, Problem>> HandleAsync(
        string serial,
        HttpContext http,
        ReadHistory use,
        PageRequest page,
        CancellationToken cancellation,
        DateTimeOffset? asOf = null
    )
    {
        if (await use.RunAsync(serial, asOf?.ToUniversalTime(), cancellation) is not { } history)
        {
            return PartLookup.Unknown(serial);
        }

        var part = page.Part(history.Items, entry => $"{entry.Id}");
        return JsonOrCsv.Of(history with { Items = part.Items, Next = part.Next }, part.Items);
    }

    /// <summary>The history, or null when there is no such part.</summary>
    public async Task<Output?> RunAsync(string serial, DateTimeOffset? asOf, CancellationToken cancellation)
    {
        if (await PartLookup.FindAsync(serial, dossiers, cancellation) is not { } dossier)
        {
            return null;
        }

        var part = dossier.Part;
        List<Fact> all = [.. dossier.Facts, .. await elsewhere.RunAsync(part, cancellation)];
        var facts = all.Where(f => asOf is null || f.OccurredAt <= asOf).ToList();
        var then = new Dossier(
            part,
            dossier.Route,
            [.. facts.Where(f => f is not (Fitting or Removal) || IsOwn(f, part))],
            PartPlacement.None
        );
        var entries = new HistoryEntries(then, await NamesAsync(all, cancellation));
        return new(
            part.Serial,
            part.Kind,
            part.Model,
            asOf,
            [.. facts.OrderBy(f => f.OccurredAt).ThenBy(f => f.RecordedAt).Select(entries.Of)],
            null
        );
    }

    private static bool IsOwn(Fact fact, Part part) =>
        fact is Fitting { PartId: var parent } ? parent == part.Id : fact is Removal r && r.PartId == part.Id;

    private async Task<HistoryNames> NamesAsync(List<Fact> facts, CancellationToken cancellation)
    {
        var fittings = facts.OfType<Fitting>().DistinctBy(f => f.Id).ToDictionary(f => f.Id);
        return new(
            await names.PeopleAsync(facts.Select(f => f.By), cancellation),
            await names.PartsAsync(fittings.Values.SelectMany(f => new[] { f.PartId, f.ChildId ?? f.PartId }), cancellation),
            await names.LotsAsync(fittings.Values.Select(f => f.LotId).OfType<Guid>(), cancellation),
            fittings
        );
    }
}
