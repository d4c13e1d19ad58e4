using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Quality.Causes;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Causes;

/// <summary>What do the failures have in common.</summary>
public sealed class RankCauses(CauseQuery query, CauseQuestions questions, AnalysisFilters filters) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/causes", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Analyses,
                "rankCauses",
                "What the failures of a stage have in common: every factor of the facts ranked by association."
            );

    /// <summary>More lines than this are no answer any more.</summary>
    public const int Most = 100;

    /// <summary>How the figures are computed.</summary>
    public static readonly string Computed =
        $"Each part counts once, by its first verdict at the stage. Of more than {CauseQuery.Most} parts the circumstances of"
        + $" {CauseQuery.Most} are looked up (lookedAt), chosen by a hash of their ids: failed ones first, up to half; where a "
        + "characteristic is asked about without regard to failures. Odds ratios and p hold for all parts, shares of failed parts for"
        + " those looked at. Every level of every factor is compared with the other levels of its factor by Fisher's exact test; p is"
        + " adjusted over all levels compared "
        + "(Benjamini-Hochberg); levels of fewer than 5 parts are not compared. Factors that say the same of every part are one"
        + " question. The upper lines are compared again with the first allowed for "
        + "(Cochran-Mantel-Haenszel), and levels that nearly the same parts have (phi of 0.9 or more) are named as not to be told"
        + " apart. Values: Kruskal-Wallis ranks the factors, with Welch's test and effect sizes "
        + "beside it; lower bounds are left out. Association is not cause. An odds ratio or an end of its interval that is infinite is"
        + " left out.";

    /// <param name="characteristic" example="ringResonanceHz">
    /// Only failures of this characteristic; also ranks what its value depends on.
    /// </param>
    /// <param name="code" example="stage-failed">Only failures under this code.</param>
    public static async Task<Results<JsonOrCsv<CauseAnswer>, Problem>> HandleAsync(
        HttpContext http,
        PageRequest page,
        [AsParameters] AnalysisQuery asked,
        [FromQuery] string? characteristic,
        [FromQuery] string? code,
        RankCauses use,
        CancellationToken cancellation
    )
    {
        var (answer, refusal) = await use.RunAsync(asked, characteristic, code, cancellation);
        if (refusal is not null)
        {
            return ProblemAnswers.From(refusal);
        }

        var part = page.Part(answer!.Items, i => $"{i.Factor}/{i.Level}");
        return JsonOrCsv.Of(answer with { Items = part.Items, Next = part.Next }, part.Items, part.Next);
    }

    /// <summary>The ranking, or what is wrong with the question.</summary>
    public async Task<(CauseAnswer? Answer, Refusal? Refusal)> RunAsync(
        AnalysisQuery asked,
        string? characteristic,
        string? code,
        CancellationToken cancellation
    )
    {
        var (filter, question, refusal) = await questions.ReadAsync(asked, characteristic, code, cancellation);
        if (refusal is not null)
        {
            return (null, refusal);
        }

        var found = await query.RunAsync(filter, question, cancellation);
        if (found.All.Count == 0 && question.Characteristic is { } unknown && !await KnowsAsync(question.Stage, unknown, cancellation))
        {
            return (null, Refusal.Invalid("characteristic", QualitySentences.StageHasNoCharacteristic(question.Stage, unknown)));
        }

        var factors = FactorTwins.Joined(found.Factors);
        var table = new FactorTable([.. found.Outcomes.Select(o => o.Failed)], factors, [.. found.Outcomes.Select(o => (double?)o.Value)]);
        var ranked = CauseRanking.Rank(table, most: Most);
        var valued = found.Outcomes.Any(o => o.Value is not null) ? ValueCauseRanking.Rank(table) : null;
        return (
            new(
                filter.From,
                filter.To,
                filter.Model,
                question.Stage,
                question.Characteristic,
                question.Code,
                found.All.Count,
                found.All.Count(o => o.Failed),
                found.Outcomes.Count,
                found.Outcomes.Count(o => o.Failed),
                factors.Count,
                ranked.IsKnown ? ranked.Value.LevelsCompared : 0,
                ranked.IsKnown ? ranked.Value.LevelsTooSmall : 0,
                ranked.Missing?.ToString(),
                ranked.IsKnown ? [.. ranked.Value.Associations.Select((a, i) => CauseRow.Of(a, i + 1))] : [],
                null,
                found.Outcomes.FirstOrDefault(o => o.Unit is not null)?.Unit,
                found.Outcomes.Count(o => o.Bound),
                valued?.Missing?.ToString(),
                valued is { IsKnown: true } ? [.. valued.Value.Associations.Select((a, i) => ValueCauseRow.Of(a, i + 1))] : [],
                Computed
            ),
            null
        );
    }

    private async Task<bool> KnowsAsync(string stage, string characteristic, CancellationToken cancellation) =>
        (await filters.StagesAsync(cancellation)).Any(s =>
            s.Stage.Code == stage && s.Stage.Characteristics.Any(c => c.Name == characteristic)
        );
}
