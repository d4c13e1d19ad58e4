using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Overview;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.History;

/// <summary>Every fact about a part in the order in which it happened, now or as of a time.</summary>
public sealed class PartHistory(DossierReader dossiers, ElsewhereQuery elsewhere, NameQuery names) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/history", HandleAsync).Is(Subjects.Parts, "readHistory", "Every fact in order, now or as of a time.");

    public sealed record Output(
        string Serial,
        string Kind,
        string Model,
        DateTimeOffset? AsOf,
        IReadOnlyList<HistoryEntry> Items,
        string? Next
    );

    public static async Task<Results<Table<Output>, Problem>> HandleAsync(
        string serial,
        HttpContext http,
        PartHistory use,
        PageRequest page,
        CancellationToken cancellation,
        DateTimeOffset? asOf = null
    )
    {
        if (await use.RunAsync(serial, asOf?.ToUniversalTime(), cancellation) is not { } history)
        {
            return ReadPart.Unknown(serial);
        }

        var part = page.Part(history.Items, entry => $"{entry.Id}");
        return Csv.Answer(history with { Items = part.Items, Next = part.Next }, part.Items);
    }

    /// <summary>The history, or null when there is no such part.</summary>
    public async Task<Output?> RunAsync(string serial, DateTimeOffset? asOf, CancellationToken cancellation)
    {
        if (await ReadPart.FindAsync(serial, dossiers, cancellation) is not { } dossier)
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
        var teller = new HistoryTeller(then, await NamesAsync(all, cancellation));
        return new(
            part.Serial,
            part.Kind,
            part.Model,
            asOf,
            [.. facts.OrderBy(f => f.OccurredAt).ThenBy(f => f.RecordedAt).Select(teller.Tell)],
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

/// <summary>The names that a history needs.</summary>
public sealed record HistoryNames(
    IReadOnlyDictionary<Guid, Who> People,
    IReadOnlyDictionary<Guid, Part> Parts,
    IReadOnlyDictionary<Guid, Lot> Lots,
    IReadOnlyDictionary<Guid, Fitting> Fittings
)
{
    /// <summary>A person.</summary>
    public Who Person(Guid id) => People.GetValueOrDefault(id, Who.Nobody);

    /// <summary>What was fitted: a serial or a lot number.</summary>
    public string ItemOf(Fitting fitting) => fitting.ChildId is { } child ? Parts[child].Serial : Lots[fitting.LotId!.Value].Number;
}
