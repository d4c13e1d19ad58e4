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
    public LotFate FateAt(string? asked)
    {
        FilmFault? fault = Path.FirstFault(asked) is { } first ? Path.Faults[first] : null,
            counted = Path.Faults.FirstOrDefault(f => f.Counted && f.Is(asked));
        return new LotFate(Lot, (counted ?? fault)?.Place, Path.Passed(asked), Parts)
        {
            Counts = fault is null ? Path.Stands(asked) : counted is not null,
            Judged = Path.IsJudged(asked),
            LastFailure = fault is null ? null : LastFailure,
        };
    }

    /// <summary>What the lot got into, by kind of part.</summary>
    public static IReadOnlyList<LotReach> ReachOf(IEnumerable<FilmCount> counts) =>
        [
            .. counts
                .SelectMany(c => c.Path.Reached.Select(r => (c.Lot, Reached: r, c.Parts)))
                .GroupBy(r => (r.Lot, r.Reached.Kind))
                .Select(g => new LotReach(
                    g.Key.Lot,
                    g.Key.Kind,
                    g.Sum(r => r.Parts),
                    g.Sum(r => r.Reached.Shipped ? r.Parts : 0),
                    g.Sum(r => r.Reached.Returned ? r.Parts : 0)
                ))
                .OrderBy(r => r.Lot, StringComparer.Ordinal)
                .ThenBy(r => r.Kind, StringComparer.Ordinal),
        ];
}
