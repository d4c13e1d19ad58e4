using Traceability.Domain.Quality.FilmLots;

namespace Traceability.Domain.Tests.Quality.FilmLots;

/// <summary>Groups of diaphragms of a lot and stratum with one fate.</summary>
public sealed record FatedFilm(string Lot, string Stratum, string? FailedAt, bool Passed, int Parts = 1);

/// <summary>
/// Cohorts for tests: every place of failure is one stage, reached by all that are not on their way and did not fail elsewhere.
/// </summary>
public static class Cohorts
{
    public static FilmCohort Of(params FatedFilm[] film)
    {
        string[] places = [.. film.Select(f => f.FailedAt).OfType<string>().Distinct().DefaultIfEmpty("last")];
        return new(
            [.. film.Select(f => new LotFate(f.Lot, f.FailedAt, f.Passed, f.Parts))],
            [
                .. from f in film
                where f.Passed || f.FailedAt is not null
                from place in places
                where f.FailedAt is null || f.FailedAt == place
                group f by (f.Lot, f.Stratum, place) into g
                where g.Sum(f => f.Parts) > 0
                select new LotStageCount(
                    g.Key.Lot,
                    g.Key.Stratum,
                    "capsule",
                    g.Key.place,
                    g.Sum(f => f.Parts),
                    g.Sum(f => f.FailedAt is null ? 0 : f.Parts)
                ),
            ]
        );
    }
}
