using System.Runtime.InteropServices;
using Traceability.Domain.Records;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>
/// So many of one film lot reached a stage, and so many of those failed there. Counted are diaphragms as long as they are judged by
/// themselves, and from the capsule on the capsule or the unit: with two films of the lot inside it is judged once, and counts once. One
/// with films of two lots counts once for each.
/// </summary>
/// <param name="Lot">The film lot.</param>
/// <param name="Stratum">What must not be mistaken for the lot: the builder, the week. The same text throughout when nothing is to be kept
/// apart.</param>
/// <param name="Kind">The kind of part that is judged there.</param>
/// <param name="Stage">The stage; <see cref="ByHand"/> for what was reported outside any stage, <see cref="FilmPath.Field"/> for what came
/// back of what was sent out.</param>
/// <param name="Reached">Those that came to a first verdict there, or were reported there before it; of the field, those sent out.</param>
/// <param name="Failed">Those whose first verdict was no pass, or that were reported there by hand; 0 to
/// <paramref name="Reached"/>.</param>
public readonly record struct LotStageCount(string Lot, string Stratum, string Kind, string Stage, int Reached, int Failed)
{
    /// <summary>
    /// Stands in for the stage of a failure that was reported by hand while no stage was open: every part could have been reported.
    /// </summary>
    public const string ByHand = "reported";

    /// <summary>
    /// True for the field where the whole way is asked about: returns come for years, so they are compared with those of the other lots but
    /// are not part of the yield of the workshop.
    /// </summary>
    public bool IsAside { get; init; }

    /// <summary>The stage with the kind of part it belongs to, as programs name it.</summary>
    public string Code => $"{Kind}/{Stage}";

    /// <summary>
    /// The counts of all lots, strata and stages at the place or stage asked for. Thousands of counts of a dozen steps each: they are
    /// summed in place.
    /// </summary>
    public static IReadOnlyList<LotStageCount> Of(IEnumerable<FilmCount> counts, string? asked)
    {
        var sums = new Dictionary<(string Lot, string Stratum, string Kind, string Stage), (int Reached, int Failed)>();
        foreach (FilmCount count in counts)
        {
            foreach (FilmStep step in count.Path.StepsAt(asked))
            {
                Add(count, step.Kind, step.Stage, step.Reached, step.Failed);
            }

            // Whoever could have been reported by hand: the diaphragm itself, and what it was the first of its lot to come into.
            Add(count, PartKinds.Diaphragm, ByHand, 1, 0);
            foreach (FilmReach reach in count.Path.Reached)
            {
                Add(count, reach.Kind, ByHand, 1, 0);
                if (reach is { Kind: PartKinds.Unit, Shipped: true } && asked is (null or FilmPath.Field))
                {
                    Add(count, reach.Kind, FilmPath.Field, 1, reach.Returned ? 1 : 0);
                }
            }

            foreach (
                FilmFault fault in count.Path.Faults.Where(f =>
                    f is { Stage: null, Counted: true } && f.Place != FilmPath.Field && f.Is(asked)
                )
            )
            {
                Add(count, FilmPlace.KindOf(fault.Place), ByHand, 0, 1);
            }
        }

        HashSet<string> reported = [.. sums.Where(s => s.Key.Stage == ByHand && s.Value.Failed > 0).Select(s => s.Key.Kind)];
        return
        [
            .. sums.Where(s => s.Value.Reached > 0 && (s.Key.Stage != ByHand || reported.Contains(s.Key.Kind)))
                .Select(s => new LotStageCount(
                    s.Key.Lot,
                    s.Key.Stratum,
                    s.Key.Kind,
                    s.Key.Stage,
                    s.Value.Reached,
                    Math.Min(s.Value.Failed, s.Value.Reached)
                )
                {
                    IsAside = asked is null && s.Key.Stage == FilmPath.Field,
                })
                .OrderBy(s => s.Lot, StringComparer.Ordinal)
                .ThenBy(s => s.Code, StringComparer.Ordinal)
                .ThenBy(s => s.Stratum, StringComparer.Ordinal),
        ];

        void Add(FilmCount count, string kind, string stage, int reached, int failed)
        {
            ref (int Reached, int Failed) sum = ref CollectionsMarshal.GetValueRefOrAddDefault(
                sums,
                (count.Lot, count.Stratum, kind, stage),
                out _
            );
            sum = (sum.Reached + reached * count.Parts, sum.Failed + failed * count.Parts);
        }
    }
}
