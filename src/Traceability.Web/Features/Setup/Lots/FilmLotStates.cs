using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>
/// How a list of parts shows its film lots. A film lot is also a part, whose route ends with the release; what stops it afterwards is
/// decided on the lot, and a list that called it finished would send people to it.
/// </summary>
public sealed class FilmLotStates(WorkshopContext db, LotQuery lots)
{
    /// <summary>The states to show, by serial: as they are, but for finished film lots that are on hold or in quarantine.</summary>
    public async Task<IReadOnlyDictionary<string, string>> ShownAsync(IReadOnlyCollection<(string Serial, string Kind, string State)> parts, CancellationToken cancellation)
    {
        var shown = parts.DistinctBy(p => p.Serial).ToDictionary(p => p.Serial, p => p.State);
        var numbers = parts.Where(p => p.Kind == PartKinds.FilmLot && p.State == Words.Of(PartState.Finished)).Select(p => p.Serial).ToList();
        foreach (var lot in numbers.Count == 0 ? [] : await lots.StandingOfAsync(db.Set<Lot>().Where(l => numbers.Contains(l.Number)), cancellation))
        {
            shown[lot.Lot.Number] = lot.Holds.Count > 0 ? Words.Of(PartState.OnHold) : lot.State == LotState.Quarantined ? "quarantined" : shown[lot.Lot.Number];
        }

        return shown;
    }
}
