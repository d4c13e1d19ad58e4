namespace Traceability.Domain.Quality.FilmLots;

/// <summary>
/// So many diaphragms of one film lot, worked under the same circumstances, with the same fate, followed into the capsules and units they
/// became. One row may stand for one diaphragm or for a whole GROUP BY.
/// </summary>
/// <param name="Lot">The film lot.</param>
/// <param name="Stratum">What must not be mistaken for the lot: the builder, the week. The same text throughout when nothing is to be kept apart.</param>
/// <param name="FirstFailedAt">The stage (or the field) where it first failed, or null when it never did.</param>
/// <param name="Passed">True when it has passed its last stage, first time or after rework; false when it is in work or was given up.</param>
/// <param name="Parts">How many diaphragms, 0 or more.</param>
public readonly record struct LotFate(string Lot, string Stratum, string? FirstFailedAt, bool Passed, int Parts = 1)
{
    /// <summary>When the latest of these diaphragms first failed; null when none did, or when it was not asked.</summary>
    public DateTimeOffset? LastFailure { get; init; }

    /// <summary>True when nothing is known yet: it has neither failed nor passed its last stage.</summary>
    public bool IsInWork => FirstFailedAt is null && !Passed;
}
