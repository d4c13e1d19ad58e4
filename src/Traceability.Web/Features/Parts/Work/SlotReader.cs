using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>Reads what is in the slots of a part or about to be fitted there.</summary>
public sealed class SlotReader(WorkshopContext db, Writes writes, DossierReader dossiers, LotQuery lots)
{
    /// <summary>What is about to be fitted, by position, with the children locked; and what is in the stage's slots already.</summary>
    public async Task<SlotContents> ReadAsync(Dossier parent, IReadOnlyList<FitRequest> requests, CancellationToken cancellation)
    {
        var inputs = new Dictionary<string, Input>();
        var children = new List<OpenPart>();
        var named = await NamedAsync(requests, cancellation);
        foreach (var request in requests)
        {
            if (inputs.ContainsKey(request.Position))
            {
                return new(inputs, children, Refusal.Invalid("position", PartsSentences.PositionIsNamedTwice(request.Position)));
            }

            var (input, child, refusal) = await InputAsync(request, named, cancellation);
            if (input is null)
            {
                return new(inputs, children, refusal);
            }

            inputs[request.Position] = input;
            if (child is not null)
            {
                children.Add(child);
            }
        }

        foreach (var fitting in parent.PresentFittings.Values.Where(f => !inputs.ContainsKey(f.Position)))
        {
            if (await PresentAsync(fitting, cancellation) is { } present)
            {
                inputs[fitting.Position] = present;
            }
        }

        return new(inputs, children, null);
    }

    /// <summary>
    /// The children that are named, locked together and in order: two commands that want the same ones crosswise do not wait for each
    /// other.
    /// </summary>
    private async Task<IReadOnlyDictionary<string, NamedChild>> NamedAsync(
        IReadOnlyList<FitRequest> requests,
        CancellationToken cancellation
    )
    {
        var ids = new Dictionary<string, Guid>();
        foreach (var name in requests.Select(r => r.Child).OfType<string>().Distinct())
        {
            if (await dossiers.FindAsync(name, cancellation) is { } id)
            {
                ids[name] = id;
            }
        }

        if (ids.Count == 0)
        {
            return new Dictionary<string, NamedChild>();
        }

        var open = await writes.Book.OpenAsync(ids.Values, cancellation);
        var takenOut = await db.Set<Containment>()
            .Where(c => ids.Values.Contains(c.ItemId) && !c.ItemIsLot && c.Depth == 1)
            .GroupBy(c => c.ItemId)
            .Select(g => new { Id = g.Key, At = g.Max(c => c.PresentUntil) })
            .ToDictionaryAsync(x => x.Id, x => x.At, cancellation);
        return ids.ToDictionary(i => i.Key, i => new NamedChild(open[i.Value], takenOut.GetValueOrDefault(i.Value)));
    }

    private async Task<(Input? Input, OpenPart? Child, Refusal? Refusal)> InputAsync(
        FitRequest request,
        IReadOnlyDictionary<string, NamedChild> named,
        CancellationToken cancellation
    )
    {
        if (request.Child is null == request.Lot is null)
        {
            return (null, null, Refusal.Invalid("fittings", PartsSentences.PositionTakesEitherChildOrLot(request.Position)));
        }

        if (request.Child is { } serial)
        {
            return named.TryGetValue(serial, out var child)
                ? (PartInput.Of(request.Position, child.Part.Dossier, false) with { FreeSince = child.FreeSince }, child.Part, null)
                : (null, null, Refusal.Invalid("child", PartsSentences.NoPartToFit(serial)));
        }

        if (request.Quantity <= 0)
        {
            return (null, null, Refusal.Invalid("quantity", PartsSentences.QuantityIsAboveZero));
        }

        return await lots.FindAsync([request.Lot!.Trim().ToUpperInvariant()], cancellation) is [var lot]
            ? (
                new LotInput(request.Position, lot.Lot, lot.State, lot.Holds, request.Quantity) { RetiredBecause = lot.RetiredBecause },
                null,
                null
            )
            : (null, null, Refusal.Invalid("lot", PartsSentences.NoLotToFit(request.Lot)));
    }

    private async Task<Input?> PresentAsync(Fitting fitting, CancellationToken cancellation)
    {
        if (fitting.ChildId is { } child)
        {
            return await dossiers.LoadAsync(child, cancellation) is { } dossier ? PartInput.Of(fitting.Position, dossier, true) : null;
        }

        var lot = (await lots.StandingOfAsync(db.Set<Lot>().Where(l => l.Id == fitting.LotId), cancellation)).Single();
        return new LotInput(fitting.Position, lot.Lot, lot.State, lot.Holds, fitting.Quantity, true);
    }
}
