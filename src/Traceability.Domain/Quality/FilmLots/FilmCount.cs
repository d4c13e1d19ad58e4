namespace Traceability.Domain.Quality.FilmLots;

/// <summary>So many diaphragms of one film lot that went the same way under the same circumstances.</summary>
/// <param name="Lot">The film lot.</param>
/// <param name="Stratum">What must not be mistaken for the lot; the same text throughout when nothing is to be kept apart.</param>
/// <param name="Path">The way they went.</param>
/// <param name="Parts">How many, 0 or more.</param>
/// <param name="LastFailedAt">For every fault of the path when the latest of them first failed there; empty when the path has none.</param>
public sealed record FilmCount(string Lot, string Stratum, FilmPath Path, int Parts, IReadOnlyList<DateTimeOffset> LastFailedAt)
{
    /// <summary>What became of them at the place or stage asked for, or altogether.</summary>
    public LotFate FateAt(string? asked)
    {
        int? fault = Path.FirstFault(asked);
        return new LotFate(Lot, Stratum, fault is { } first ? Path.Faults[first].Place : null, Path.Passed(asked), Parts)
        {
            LastFailure = fault is { } at && at < LastFailedAt.Count ? LastFailedAt[at] : null,
        };
    }

    /// <summary>First verdicts by lot and stage, for the rolled-throughput yield.</summary>
    public static IReadOnlyList<LotStageCount> StagesOf(IEnumerable<FilmCount> counts, string? asked) =>
    [
        .. counts.SelectMany(c => c.Path.StepsAt(asked).Select(s => (c.Lot, Stage: $"{s.Kind}/{s.Stage}", Judged: s.Judged * c.Parts, PassedFirst: s.PassedFirst * c.Parts)))
            .GroupBy(s => (s.Lot, s.Stage)).OrderBy(g => g.Key.Lot, StringComparer.Ordinal).ThenBy(g => g.Key.Stage, StringComparer.Ordinal)
            .Select(g => new LotStageCount(g.Key.Lot, g.Key.Stage, g.Sum(s => s.Judged), g.Sum(s => s.PassedFirst))),
    ];
}
