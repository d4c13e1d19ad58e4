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

/// <summary>The parts behind a line of the ranking.</summary>
public sealed class ListCauseParts(CauseQuery query, CauseQuestions questions) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/causes/parts", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Analyses, "listCauseParts", "The parts of one level of one factor.");

    /// <param name="characteristic" example="ringResonanceHz">Only failures of this characteristic.</param>
    /// <param name="code" example="stage-failed">Only failures under this code.</param>
    /// <param name="factor" example="builder at mount">A factor of the ranking; all parts when it is left out.</param>
    /// <param name="level" example="B2">One of its levels.</param>
    public static async Task<Results<JsonOrCsv<Page<CausePart>>, Problem>> HandleAsync(
        HttpContext http,
        PageRequest page,
        [AsParameters] AnalysisQuery asked,
        [FromQuery] string? characteristic,
        [FromQuery] string? code,
        [FromQuery] string? factor,
        [FromQuery] string? level,
        ListCauseParts use,
        CancellationToken cancellation
    )
    {
        var (parts, refusal) = await use.RunAsync(asked, characteristic, code, factor, level, cancellation);
        return refusal is not null ? ProblemAnswers.From(refusal) : JsonOrCsv.Of(page.Part(parts!, p => p.Serial));
    }

    /// <summary>The parts of one level of one factor; of all, when none is named.</summary>
    public async Task<(IReadOnlyList<CausePart>? Parts, Refusal? Refusal)> RunAsync(
        AnalysisQuery asked,
        string? characteristic,
        string? code,
        string? factor,
        string? level,
        CancellationToken cancellation
    )
    {
        var (filter, question, refusal) = await questions.ReadAsync(asked, characteristic, code, cancellation);
        if (refusal is not null)
        {
            return (null, refusal);
        }

        var found = await query.RunAsync(filter, question, cancellation);
        var column = string.IsNullOrEmpty(factor) ? null : FactorTwins.Joined(found.Factors).FirstOrDefault(f => f.Name == factor);
        var wanted = column is null || string.IsNullOrEmpty(level) ? FactorColumn.Unknown : column.Levels.ToList().IndexOf(level);
        return !string.IsNullOrEmpty(factor) && column is null
                ? (null, Refusal.Invalid("factor", QualitySentences.ThesePartsHaveNoSuchFactor))
            : !string.IsNullOrEmpty(level) && wanted < 0 ? (null, Refusal.Invalid("level", QualitySentences.ThisFactorHasNoSuchLevel))
            : (
                [
                    .. found
                        .Outcomes.Where((_, i) => wanted < 0 || column!.Codes[i] == wanted)
                        .OrderByDescending(o => o.Failed)
                        .Select(o => new CausePart(o.Serial, o.At, o.Failed, o.Value, o.Unit)),
                ],
                null
            );
    }
}
