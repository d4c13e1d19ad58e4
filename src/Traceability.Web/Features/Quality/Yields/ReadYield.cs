using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Quality.Yields;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Yields;

/// <summary>The yields of one group.</summary>
/// <param name="Group" example="ring-resonance">The group: a stage, a model, a film lot, a builder, a week and so on.</param>
/// <param name="Judged" example="250">First verdicts counted.</param>
/// <param name="PassedFirst" example="231">Those of them that passed.</param>
/// <param name="FirstPassYield">Passed of all first verdicts of the group.</param>
/// <param name="Stages" example="1">Stages of the group.</param>
/// <param name="RolledThroughputYield">The product of the first-pass yields of these stages.</param>
public sealed record YieldRow(string Group, int Judged, int PassedFirst, Share FirstPassYield, int Stages, Share RolledThroughputYield);

/// <summary>Yields by group, with how they were computed and on how many first verdicts.</summary>
/// <param name="From" example="2025-11-30T00:00:00Z">Beginning of the period.</param>
/// <param name="To" example="2026-11-30T00:00:00Z">End of the period.</param>
/// <param name="Model" example="TARN-1">The model asked for; null for all.</param>
/// <param name="Stage" example="ring-resonance">The stage asked for; null for all.</param>
/// <param name="By" example="stage">What the groups are made by.</param>
/// <param name="Interval" example="wilson">How intervals are made: wilson or clopper-pearson.</param>
/// <param name="Judged" example="2480">All first verdicts counted.</param>
/// <param name="All">The first-pass yield of all of them.</param>
/// <param name="Computed" example="Parts that passed a stage at their first attempt, of all that were judged.">
/// How the figures are computed, in words.
/// </param>
/// <param name="Items">The groups.</param>
/// <param name="Next" example="Mzc">Cursor of the next page; null at the end.</param>
public sealed record YieldAnswer(
    DateTimeOffset From,
    DateTimeOffset To,
    string? Model,
    string? Stage,
    string By,
    string Interval,
    int Judged,
    Share All,
    string Computed,
    IReadOnlyList<YieldRow> Items,
    string? Next
);

/// <summary>First-pass and rolled-throughput yield.</summary>
public sealed class ReadYield(YieldQuery query, AnalysisFilters filters) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/yield", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Analyses,
                "readYield",
                "First-pass and rolled-throughput yield by stage, model, film lot, builder, week and more."
            );

    /// <summary>How the figures are computed.</summary>
    public const string Computed =
        "Counted are first verdicts: of every part the first attempt at a stage that came to a verdict, when it was begun in the"
        + " period; corrections are taken into account, a conditional verdict counts as not passed. "
        + "First-pass yield: passed of all first verdicts of the group, interval 95 %. Rolled-throughput yield: product of the"
        + " first-pass yields of the group's stages, interval 95 % by recovering variances.";

    /// <param name="by" example="stage">
    /// What the groups are made by: stage, model, film-lot, builder, week and so on; stage when it is left out.
    /// </param>
    /// <param name="interval" example="wilson">How intervals are made: wilson or clopper-pearson; wilson when it is left out.</param>
    public static async Task<Results<JsonOrCsv<YieldAnswer>, Problem>> HandleAsync(
        HttpContext http,
        PageRequest page,
        [AsParameters] AnalysisQuery asked,
        [FromQuery] string? by,
        [FromQuery] string? interval,
        ReadYield use,
        CancellationToken cancellation
    )
    {
        var (answer, refusal) = await use.RunAsync(asked, by, interval, cancellation);
        if (refusal is not null)
        {
            return ProblemAnswers.From(refusal);
        }

        var part = page.Part(answer!.Items, y => y.Group);
        return JsonOrCsv.Of(answer with { Items = part.Items, Next = part.Next }, part.Items, part.Next);
    }

    /// <summary>The yields, or what is wrong with the question.</summary>
    public async Task<(YieldAnswer? Answer, Refusal? Refusal)> RunAsync(
        AnalysisQuery asked,
        string? by,
        string? interval,
        CancellationToken cancellation
    )
    {
        var (filter, refusal) = await filters.ReadAsync(asked, placesToo: false, cancellation);
        var group = string.IsNullOrEmpty(by) ? "stage" : by;
        var exact = interval is "clopper-pearson";
        refusal ??= YieldQuery.Groups.Contains(group) ? null : Refusal.Invalid("by", string.Join(", ", YieldQuery.Groups));
        refusal ??=
            interval is null or "" or "wilson" || exact ? null : Refusal.Invalid("interval", QualitySentences.WilsonOrClopperPearson);
        if (refusal is not null)
        {
            return (null, refusal);
        }

        var counts = await query.RunAsync(filter, group, cancellation);
        var judged = counts.Sum(c => c.Judged);
        return (
            new(
                filter.From,
                filter.To,
                filter.Model,
                filter.Stage,
                group,
                exact ? "clopper-pearson" : "wilson",
                judged,
                Share.From(counts.Sum(c => c.PassedFirst), judged, exact),
                Computed,
                [.. counts.GroupBy(c => c.Group).Select(g => Row(g.Key, [.. g], exact))],
                null
            ),
            null
        );
    }

    private static YieldRow Row(string group, YieldCount[] stages, bool exact)
    {
        int passed = stages.Sum(s => s.PassedFirst),
            judged = stages.Sum(s => s.Judged);
        return new(
            group,
            judged,
            passed,
            Share.From(passed, judged, exact),
            stages.Length,
            Share.From(RolledThroughputYield.Of([.. stages.Select(s => (s.PassedFirst, s.Judged))]))
        );
    }
}
