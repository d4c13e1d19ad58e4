using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Book;

/// <summary>
/// Finds every containment by walking the fittings recursively: an item is inside a container for as long as every fitting on the way
/// is in place. What was taken out in the moment in which it was fitted was in its parent, if for no time, and in nothing above it. The
/// slow, plain way, against which the kept closure is checked.
/// </summary>
public static class FittingWalk
{
    /// <summary>All containments that the fittings and removals lead to.</summary>
    public static IEnumerable<Containment> Containments(
        IReadOnlyCollection<Fitting> fittings,
        IReadOnlyDictionary<Guid, DateTimeOffset> removedAt
    )
    {
        var byParent = fittings.ToLookup(f => f.PartId);
        return byParent.SelectMany(group => Inside(group.Key, group.Key, 1, DateTimeOffset.MinValue, null));

        IEnumerable<Containment> Inside(Guid container, Guid parent, int depth, DateTimeOffset from, DateTimeOffset? until)
        {
            foreach (var fitting in byParent[parent])
            {
                var start = Later(from, fitting.OccurredAt);
                var end = Earlier(until, removedAt.TryGetValue(fitting.Id, out var removed) ? removed : null);
                if (end <= start && depth > 1)
                {
                    continue;
                }

                yield return new()
                {
                    ContainerId = container,
                    FittingId = fitting.Id,
                    ItemId = fitting.ItemId,
                    ItemIsLot = fitting.LotId is not null,
                    Depth = depth,
                    PresentFrom = start,
                    PresentUntil = end,
                };
                if (fitting.ChildId is { } child && (end is null || end > start))
                {
                    foreach (var deeper in Inside(container, child, depth + 1, start, end))
                    {
                        yield return deeper;
                    }
                }
            }
        }
    }

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset b) => a > b ? a : b;

    private static DateTimeOffset? Earlier(DateTimeOffset? a, DateTimeOffset? b) =>
        a is null ? b
        : b is null ? a
        : a < b ? a
        : b;
}
