using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>The diaphragms behind the numbers of one film lot, down to the units.</summary>
public sealed class ListFilmLotParts(FilmPartsQuery query, LotQuery lots, AnalysisFilters filters, PartsNow now) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/film-lots/{number}/parts", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Analyses, "listFilmLotParts", "The diaphragms behind a film lot's numbers, down to their units.");

    /// <summary>The fates that can be asked for.</summary>
    public static readonly IReadOnlyList<string> Fates = ["failed", "in-work", "passed-first", "passed-after-rework"];

    /// <param name="number" example="F-2603">The film lot's number.</param>
    /// <param name="fate" example="failed">
    /// Only with this fate: failed (with or without rework since), in-work, passed-first or passed-after-rework.
    /// </param>
    /// <param name="place" example="capsule">
    /// Only those that first failed here: diaphragm, capsule, soak, insulation, acoustic, final or field.
    /// </param>
    public static async Task<Results<JsonOrCsv<Page<FilmLotPart>>, Problem>> HandleAsync(
        string number,
        HttpContext http,
        PageRequest page,
        [AsParameters] AnalysisQuery asked,
        [FromQuery] string? fate,
        [FromQuery] string? place,
        ListFilmLotParts use,
        CancellationToken cancellation
    )
    {
        var (rows, refusal) = await use.RunAsync(number, asked, fate, place, cancellation);
        return refusal is not null ? ProblemAnswers.From(refusal) : JsonOrCsv.Of(page.Part(rows!, p => p.Serial));
    }

    /// <summary>
    /// Diaphragms of the lot with that fate (failed includes those that passed after rework) that first failed at that place.
    /// </summary>
    public async Task<(IReadOnlyList<FilmLotPart>? Rows, Refusal? Refusal)> RunAsync(
        string number,
        AnalysisQuery asked,
        string? fate,
        string? place,
        CancellationToken cancellation
    )
    {
        var (filter, refusal) = await filters.ReadAsync(asked, placesToo: true, cancellation);
        refusal ??= fate is null or "" || Fates.Contains(fate) ? null : Refusal.Invalid("fate", string.Join(", ", Fates));
        refusal ??=
            place is null or "" || FilmPlace.All.Contains(place) ? null : Refusal.Invalid("place", string.Join(", ", FilmPlace.All));
        if (refusal is not null)
        {
            return (null, refusal);
        }

        var code = number.Trim().ToUpperInvariant();
        if (await lots.FindAsync([code], cancellation) is not [{ Lot.Kind: Domain.Records.Lot.FilmKind }])
        {
            return (null, Refusal.NotFound(QualitySentences.ThereIsNoFilmLot(code)));
        }

        var films = (await query.RunAsync(filter, code, cancellation)).Where(Asked).ToList();
        var standings = await now.OfAsync(films.Select(f => f.Id), cancellation);
        return ([.. films.Select(f => FilmLotPart.Of(f, standings[f.Id]))], null);

        bool Asked(FollowedFilm p) =>
            (string.IsNullOrEmpty(place) || p.FailedPlace == place)
            && (string.IsNullOrEmpty(fate) || p.Fate == fate || (fate == "failed" && p.FailedPlace is not null));
    }
}
