using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Persistence.Book;

/// <summary>Where a part lies after facts that say so.</summary>
internal static class PlacementsOf
{
    /// <summary>The surroundings with the carrier that the facts put the part in, or took it out of.</summary>
    public static PartPlacement After(PartPlacement around, IReadOnlyList<Fact> facts) =>
        facts.Aggregate(
            around,
            (a, fact) =>
                fact switch
                {
                    CarrierPlacement placed => a with { CarrierCode = placed.CarrierCode },
                    CarrierRelease => a with { CarrierCode = null },
                    _ => a,
                }
        );
}
