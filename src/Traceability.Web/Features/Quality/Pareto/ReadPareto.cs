using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Quality.Pareto;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Pareto;

/// <summary>Failure codes from the most frequent to the least, with shares.</summary>
/// <param name="From" example="2025-11-30T00:00:00Z">Beginning of the period.</param>
/// <param name="To" example="2026-11-30T00:00:00Z">End of the period.</param>
/// <param name="Model" example="TARN-1">The model asked for; null for all.</param>
/// <param name="Stage" example="ring-resonance">The stage asked for; null for all.</param>
/// <param name="Failures" example="64">Nonconformities counted.</param>
/// <param name="VitalFew" example="3">The fewest codes that make up 80 % of them.</param>
/// <param name="Computed" example="Counted are failed attempts, each under the code of its nonconformity.">
/// How they are counted, in words.
/// </param>
/// <param name="Items">The codes, the most frequent first.</param>
/// <param name="Next" example="Mzc">Cursor of the next page; null at the end.</param>
public sealed record ParetoAnswer(
    DateTimeOffset From,
    DateTimeOffset To,
    string? Model,
    string? Stage,
    int Failures,
    int VitalFew,
    string Computed,
    IReadOnlyList<ParetoBar> Items,
    string? Next
);

/// <summary>What fails most often.</summary>
public sealed class ReadPareto(ChartQuery query, AnalysisFilters filters) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/pareto", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Analyses, "readPareto", "Failure codes from the most frequent to the least.");

    private const string Computed =
        "Every nonconformity raised in the period counts once, under its code; where the code only says that a stage failed, under the"
        + " stage. Vital few: the fewest codes that make up 80 % of all.";

    public static async Task<Results<JsonOrCsv<ParetoAnswer>, Problem>> HandleAsync(
        HttpContext http,
        PageRequest page,
        [AsParameters] AnalysisQuery asked,
        ReadPareto use,
        CancellationToken cancellation
    )
    {
        var (answer, refusal) = await use.RunAsync(asked, cancellation);
        if (refusal is not null)
        {
            return ProblemAnswers.From(refusal);
        }

        var part = page.Part(answer!.Items, b => b.Code);
        return JsonOrCsv.Of(answer with { Items = part.Items, Next = part.Next }, part.Items, part.Next);
    }

    /// <summary>The codes, or what is wrong with the question.</summary>
    public async Task<(ParetoAnswer? Answer, Refusal? Refusal)> RunAsync(AnalysisQuery asked, CancellationToken cancellation)
    {
        var (filter, refusal) = await filters.ReadAsync(asked, placesToo: false, cancellation);
        if (refusal is not null)
        {
            return (null, refusal);
        }

        var pareto = FailureCodePareto.Of((await query.CodesAsync(filter, cancellation)).Select(c => KeyValuePair.Create(c.Code, c.Count)));
        return (
            new(filter.From, filter.To, filter.Model, filter.Stage, pareto.Total, pareto.VitalFew().Count, Computed, pareto.Bars, null),
            null
        );
    }
}
