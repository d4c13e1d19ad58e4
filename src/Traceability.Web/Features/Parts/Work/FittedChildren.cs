using Traceability.Domain.Records;
using Traceability.Persistence.Book;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>What fitting and removing means for the part that was fitted: it leaves its carrier, which is free again.</summary>
public static class FittedChildren
{
    /// <summary>Records with the children that they are fitted in <paramref name="parent"/> now.</summary>
    public static void MarkFitted(RecordBook book, OpenPart parent, IReadOnlyList<OpenPart> children, Stamp stamp)
    {
        foreach (var child in children)
        {
            if (child.Dossier.Around.CarrierCode is { } carrier)
            {
                book.Append(
                    child,
                    "leave-carrier",
                    new CarrierRelease(stamp.NewId(), child.Dossier.Part.Id, carrier, stamp.By, stamp.OccurredAt, stamp.RecordedAt)
                );
            }

            RecordBook.SetFittedIn(child, parent.Dossier.Part, stamp.OccurredAt);
        }
    }

    /// <summary>Records with the children behind these removals that they are free again.</summary>
    public static async Task MarkRemovedAsync(
        RecordBook book,
        OpenPart parent,
        IEnumerable<Removal> removals,
        Stamp stamp,
        CancellationToken cancellation
    )
    {
        var fittings = parent.Dossier.Of<Fitting>().ToDictionary(f => f.Id);
        var freed = removals.Select(r => fittings[r.FittingId].ChildId).OfType<Guid>().ToList();
        foreach (var child in (await book.OpenAsync(freed, cancellation)).Values)
        {
            RecordBook.SetFittedIn(child, null, stamp.OccurredAt);
        }
    }
}
