using System.Runtime.InteropServices;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>So many diaphragms of one film lot that went the same way under the same circumstances.</summary>
/// <param name="Lot">The film lot.</param>
/// <param name="Stratum">What must not be mistaken for the lot; the same text throughout when nothing is to be kept apart.</param>
/// <param name="Path">The way they went.</param>
/// <param name="Parts">How many, 0 or more.</param>
/// <param name="LastFailure">When the latest of them first failed where it was asked about; null when none did.</param>
public sealed record FilmCount(string Lot, string Stratum, FilmPath Path, int Parts, DateTimeOffset? LastFailure)
{
    /// <summary>What became of them at the place or stage asked for, or altogether.</summary>
    public LotFate FateAt(string? asked) => Path.FirstFault(asked) is { } fault
        ? new LotFate(Lot, Stratum, Path.Faults[fault].Place, Path.Passed(asked), Parts) { LastFailure = LastFailure }
        : new LotFate(Lot, Stratum, null, Path.Passed(asked), Parts);

    /// <summary>First verdicts by lot and stage, for the rolled-throughput yield. Thousands of counts of a dozen steps each: they are summed in place.</summary>
    public static IReadOnlyList<LotStageCount> StagesOf(IEnumerable<FilmCount> counts, string? asked)
    {
        var sums = new Dictionary<(string Lot, string Kind, string Stage), (int Judged, int PassedFirst)>();
        foreach (FilmCount count in counts)
        {
            foreach (FilmStep step in count.Path.StepsAt(asked))
            {
                ref (int Judged, int PassedFirst) sum = ref CollectionsMarshal.GetValueRefOrAddDefault(sums, (count.Lot, step.Kind, step.Stage), out _);
                sum = (sum.Judged + step.Judged * count.Parts, sum.PassedFirst + step.PassedFirst * count.Parts);
            }
        }

        return
        [
            .. sums.Select(s => new LotStageCount(s.Key.Lot, $"{s.Key.Kind}/{s.Key.Stage}", s.Value.Judged, s.Value.PassedFirst))
                .OrderBy(s => s.Lot, StringComparer.Ordinal).ThenBy(s => s.Stage, StringComparer.Ordinal),
        ];
    }

    /// <summary>What the lot got into, by kind of part.</summary>
    public static IReadOnlyList<LotReach> ReachOf(IEnumerable<FilmCount> counts) =>
    [
        .. counts.SelectMany(c => c.Path.Reached.Select(r => (c.Lot, Reached: r, c.Parts))).GroupBy(r => (r.Lot, r.Reached.Kind))
            .Select(g => new LotReach(g.Key.Lot, g.Key.Kind, g.Sum(r => r.Parts), g.Sum(r => r.Reached.Shipped ? r.Parts : 0), g.Sum(r => r.Reached.Returned ? r.Parts : 0)))
            .OrderBy(r => r.Lot, StringComparer.Ordinal).ThenBy(r => r.Kind, StringComparer.Ordinal),
    ];
}
