using Traceability.Domain.Work;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;

namespace Traceability.Web.Features.Quality.Causes;

/// <summary>Makes the question about failures of what was asked, or says what is wrong with it.</summary>
public sealed class CauseQuestions(AnalysisFilters filters)
{
    /// <summary>The filter and the question, or the refusal.</summary>
    public async Task<(AnalysisFilter Filter, FailureAsked Question, Refusal? Refusal)> ReadAsync(
        AnalysisQuery asked,
        string? characteristic,
        string? code,
        CancellationToken cancellation
    )
    {
        var (filter, refusal) = await filters.ReadAsync(asked, placesToo: false, cancellation);
        refusal ??= filter.Stage is null ? Refusal.Invalid("stage", QualitySentences.SayAtWhichStage) : null;
        return (filter, new(filter.Stage ?? "", Blank(characteristic), Blank(code)?.ToLowerInvariant()), refusal);
    }

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
