namespace Traceability.Domain.Quality.FilmLots;

/// <summary>
/// So many diaphragms of one film lot with the same fate, followed into the capsules and units they became. One row may stand for one
/// diaphragm or for a whole GROUP BY.
/// </summary>
/// <param name="Lot">The film lot.</param>
/// <param name="FirstFailedAt">The stage (or the field) where it first failed, or null when it never did.</param>
/// <param name="Passed">True when it is through, first time or after rework; false when it is on its way or was abandoned.</param>
/// <param name="Parts">How many diaphragms, 0 or more.</param>
public readonly record struct LotFate(string Lot, string? FirstFailedAt, bool Passed, int Parts = 1)
{
    /// <summary>When the latest of these diaphragms first failed; null when none did, or when it was not asked.</summary>
    public DateTimeOffset? LastFailure { get; init; }

    /// <summary>False when it failed or passed inside a capsule or unit that counts with another diaphragm of the lot.</summary>
    public bool Counts { get; init; } = true;

    /// <summary>True when it came to a verdict at all.</summary>
    public bool Judged { get; init; } = FirstFailedAt is not null || Passed;

    /// <summary>True when nothing is known yet: it has neither failed nor got through.</summary>
    public bool IsOnItsWay => FirstFailedAt is null && !Passed;
}
