using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>Where are we failing, by film lot.</summary>
public sealed class CompareFilmLots(FilmLotQuery query, FilmBackQuery back, LotQuery lots, AnalysisFilters filters) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/film-lots", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Analyses,
                "compareFilmLots",
                "Film lots compared: where their diaphragms failed, yields with intervals, each lot against the rest."
            );

    /// <summary>How the figures are computed, for programs; the page says the same in its own words.</summary>
    public const string Computed =
        "Counted are diaphragms whose film was fitted in the period, each followed into the capsule and unit it is in; from the capsule"
        + " on, capsules and units are counted: one with two diaphragms of a lot counts once, with the film that came "
        + "into it first, one with films of two lots once for each. Stages: reached, those with a first verdict there; failed, those of"
        + " them whose first verdict was no pass, or that were reported there by hand. A conditional verdict counts as not passed. "
        + "On its way: neither failed nor through the last stage of its unit. Yield: product over the stages of (reached -"
        + " failed)/reached, 95 % interval by Greenwood's formula with the complementary log-log transform; returns from the field are"
        + " a stage of their own "
        + "in the comparison and not part of the yield unless asked about. Comparison with the rest: Cochran-Mantel-Haenszel inside"
        + " every stage, and inside every builder or week of it; where one such stratum alone can be compared, Fisher's exact test. "
        + "Adjusted p: Benjamini-Hochberg over all lots; worse: fails more often than the rest and adjusted p at most 0.05.";

    /// <param name="interval" example="wilson">
    /// How intervals of shares are made: wilson or clopper-pearson; wilson when it is left out.
    /// </param>
    /// <param name="stratify" example="builder">
    /// What else lots are compared inside of: builder, week or none; builder when it is left out.
    /// </param>
    public static async Task<Results<JsonOrCsv<FilmLotAnswer>, Problem>> HandleAsync(
        HttpContext http,
        PageRequest page,
        [AsParameters] AnalysisQuery asked,
        [FromQuery] string? interval,
        [FromQuery] string? stratify,
        CompareFilmLots use,
        CancellationToken cancellation
    )
    {
        var (answer, refusal) = await use.RunAsync(asked, interval, stratify, cancellation);
        if (refusal is not null)
        {
            return ProblemAnswers.From(refusal);
        }

        var part = page.Part(answer!.Items, l => l.Lot);
        return JsonOrCsv.Of(answer with { Items = part.Items, Next = part.Next }, part.Items, part.Next);
    }

    /// <summary>The comparison, or what is wrong with the question.</summary>
    public async Task<(FilmLotAnswer? Answer, Refusal? Refusal)> RunAsync(
        AnalysisQuery asked,
        string? interval,
        string? stratify,
        CancellationToken cancellation
    )
    {
        var (filter, refusal) = await filters.ReadAsync(asked, placesToo: true, cancellation);
        var exact = interval is "clopper-pearson";
        refusal ??=
            interval is null or "" or "wilson" || exact ? null : Refusal.Invalid("interval", QualitySentences.WilsonOrClopperPearson);
        Stratum? stratum = stratify switch
        {
            null or "" or "builder" => Stratum.Builder,
            "week" => Stratum.Week,
            "none" => Stratum.None,
            _ => null,
        };
        refusal ??= stratum is null ? Refusal.Invalid("stratify", QualitySentences.BuilderWeekOrNone) : null;
        if (refusal is not null)
        {
            return (null, refusal);
        }

        var counts = await query.CountAsync(filter, stratum!.Value, cancellation);
        var report = FilmLotFailureReport.Of(FilmCohort.Of(counts, filter.Stage));
        var reach = FilmCount.ReachOf(counts).ToLookup(r => r.Lot);
        var notOut = await back.RunAsync(filter, cancellation);
        var standings = (await lots.FindAsync([.. report.Lots.Select(l => l.Lot)], cancellation)).ToDictionary(l => l.Lot.Number);
        var names = await filters.NamesAsync(cancellation);
        FilmLotRow[] rows =
        [
            .. report
                .Lots.Select(l =>
                    Row(l, standings[l.Lot], [.. reach[l.Lot]], names, notOut.GetValueOrDefault(standings[l.Lot].Lot.Id), exact)
                )
                .OrderByDescending(r => r.Worse)
                .ThenBy(r => r.FirstPassYield.Value ?? 2)
                .ThenByDescending(r => r.Failed)
                .ThenBy(r => r.Lot, StringComparer.Ordinal),
        ];
        return (
            new(
                filter.From,
                filter.To,
                filter.Model,
                filter.Stage,
                exact ? "clopper-pearson" : "wilson",
                stratum.Value.ToString().ToLowerInvariant(),
                report.Strata,
                report.Lots.Sum(l => l.Started),
                Share.From(report.All),
                Computed,
                rows,
                null
            ),
            null
        );
    }

    private static FilmLotRow Row(FilmLotFailures l, LotStanding standing, LotReach[] reach, StageNames names, int notOut, bool exact)
    {
        var yield = Share.From(l.Yield);
        return new(
            l.Lot,
            standing.Lot.Supplier,
            standing.State.ToString().ToLowerInvariant(),
            standing.Holds.Count > 0,
            l.Started,
            l.OnItsWay,
            l.OnItsWay,
            l.Judged,
            l.PassedFirst,
            l.PassedAfterRework,
            l.Failed,
            l.FailedByPlace,
            [.. FilmLotSentence.InOrder(l.Stages, names).Select(s => StageOf(s, names, exact))],
            "capsules",
            yield with
            {
                Of = null,
            },
            yield,
            Comparison.Of(l.AgainstTheRest),
            Comparison.Of(l.WithinStages),
            l.IsStratified,
            l.P,
            l.AdjustedP,
            l.IsWorse(),
            Count("capsule", r => r.Parts),
            Count("unit", r => r.Parts),
            Count("unit", r => r.Shipped),
            Count("unit", r => r.Returned),
            Count("unit", r => r.Shipped) - notOut,
            l.LastFailure,
            FilmLotSentence.Of(l, names)
        );

        int Count(string kind, Func<LotReach, int> of) => reach.Where(r => r.Kind == kind).Sum(of);
    }

    private static FilmLotStage StageOf(LotStageCount s, StageNames names, bool exact)
    {
        var passed = Share.From(s.Reached - s.Failed, s.Reached, exact);
        return new(
            s.Code,
            FilmLotSentence.TitleOf(s, names),
            s.Reached,
            s.Failed,
            passed.Value!.Value,
            passed.Lower!.Value,
            passed.Upper!.Value
        );
    }
}
