using System.Text;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>Where are we failing, by film lot.</summary>
public sealed class CompareFilmLots(FilmLotQuery query, LotQuery lots, AnalysisFilters filters)
{
    /// <summary>How the figures are computed, for programs; the page says the same in its own words.</summary>
    public const string Computed =
        "Counted are diaphragms whose film was fitted in the period, each followed into the capsule and unit it is in. Failed: any first failure, of a stage, reported by hand or a return from the field, "
        + "reworked or not; passed: finished as a diaphragm without a failure so far. A conditional verdict counts as not passed. First-pass yield: passed of judged, interval 95 %. Rolled-throughput yield: "
        + "product of the first verdicts of every stage reached. Against the rest: Fisher's exact test; within strata: Cochran-Mantel-Haenszel; adjusted p: Benjamini-Hochberg over all lots; "
        + "worse: fails more often than the rest and adjusted p at most 0.05. A capsule or unit with several films of a lot counts once, with the film that came into it first.";

    public static async Task<IResult> HandleAsync(
        HttpContext http, [AsParameters] AnalysisQuery asked, [FromQuery] string? interval, [FromQuery] string? stratify, CompareFilmLots use, CancellationToken cancellation)
    {
        var (answer, refusal) = await use.RunAsync(asked, interval, stratify, cancellation);
        return refusal is not null ? ProblemAnswers.From(refusal)
            : Csv.IsWanted(http) ? Results.Text(Csv.Of(answer!.Items.Select(FilmLotTableRow.Of)), "text/csv", Encoding.UTF8)
            : Results.Ok(answer);
    }

    /// <summary>The comparison, or what is wrong with the question.</summary>
    public async Task<(FilmLotAnswer? Answer, Refusal? Refusal)> RunAsync(AnalysisQuery asked, string? interval, string? stratify, CancellationToken cancellation)
    {
        var (filter, refusal) = await filters.ReadAsync(asked, placesToo: true, cancellation);
        var exact = interval is "clopper-pearson";
        refusal ??= interval is null or "" or "wilson" || exact ? null : Refusal.Invalid("interval", QualitySentences.WilsonOrClopperPearson);
        Stratum? stratum = stratify switch { null or "" or "builder" => Stratum.Builder, "week" => Stratum.Week, "none" => Stratum.None, _ => null };
        refusal ??= stratum is null ? Refusal.Invalid("stratify", QualitySentences.BuilderWeekOrNone) : null;
        if (refusal is not null)
        {
            return (null, refusal);
        }

        var counts = await query.CountAsync(filter, stratum!.Value, cancellation);
        var report = FilmLotFailureReport.Of(counts.Select(c => c.FateAt(filter.Stage)), FilmCount.StagesOf(counts, filter.Stage));
        var reach = FilmCount.ReachOf(counts).ToLookup(r => r.Lot);
        var standings = (await lots.FindAsync([.. report.Lots.Select(l => l.Lot)], cancellation)).ToDictionary(l => l.Lot.Number);
        FilmLotRow[] rows =
        [
            .. report.Lots.Select(l => Row(l, standings[l.Lot], [.. reach[l.Lot]], exact))
                .OrderByDescending(r => r.Worse).ThenBy(r => r.FirstPassYield.Value ?? 2).ThenByDescending(r => r.Failed).ThenBy(r => r.Lot, StringComparer.Ordinal),
        ];
        return (new(
            filter.From, filter.To, filter.Model, filter.Stage, exact ? "clopper-pearson" : "wilson", stratum.Value.ToString().ToLowerInvariant(), report.Strata,
            report.Lots.Sum(l => l.Started), Computed, rows, null), null);
    }

    private static FilmLotRow Row(FilmLotFailures l, LotStanding standing, LotReach[] reach, bool exact)
    {
        return new(
            l.Lot, standing.Lot.Supplier, standing.State.ToString().ToLowerInvariant(), l.Started, l.InWork, l.Judged, l.PassedFirst, l.PassedAfterRework, l.Failed, l.FailedByStage,
            Share.From(l.FirstPassYield, exact), Share.From(l.RolledThroughputYield), Comparison.Of(l.AgainstTheRest), Comparison.Of(l.WithinStrata), l.IsStratified, l.P, l.AdjustedP, l.IsWorse(),
            Count("capsule", r => r.Parts), Count("unit", r => r.Parts), Count("unit", r => r.Shipped), Count("unit", r => r.Returned), l.LastFailure);

        int Count(string kind, Func<LotReach, int> of) => reach.Where(r => r.Kind == kind).Sum(of);
    }
}
