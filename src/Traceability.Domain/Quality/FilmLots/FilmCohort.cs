namespace Traceability.Domain.Quality.FilmLots;

/// <summary>The diaphragms of a period as they are counted: what became of them, and how many came to every stage.</summary>
/// <param name="Fates">What became of them, in groups.</param>
/// <param name="Stages">Of every lot, and inside it of every stratum: those that reached a stage, and those that failed there.</param>
public sealed record FilmCohort(IReadOnlyList<LotFate> Fates, IReadOnlyList<LotStageCount> Stages)
{
    /// <summary>Nobody.</summary>
    public static FilmCohort Empty { get; } = new([], []);

    /// <summary>Counts them at the place or stage asked for; altogether without a question.</summary>
    public static FilmCohort Of(IReadOnlyCollection<FilmCount> counts, string? asked) =>
        new([.. counts.Select(c => c.FateAt(asked))], LotStageCount.Of(counts, asked));
}
