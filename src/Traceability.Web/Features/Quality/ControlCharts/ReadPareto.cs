using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Quality.Pareto;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.ControlCharts;

/// <summary>Failure codes from the most frequent to the least, with shares.</summary>
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

    public static async Task<Results<Table<ParetoAnswer>, Problem>> HandleAsync(
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
        return Csv.Answer(answer with { Items = part.Items, Next = part.Next }, part.Items, part.Next);
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
