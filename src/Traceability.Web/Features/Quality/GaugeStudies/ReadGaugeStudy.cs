using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>One gauge study whole, with its result or what is missing for one.</summary>
public sealed class ReadGaugeStudy(GaugeStudyReader studies) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/gauge-studies/{number}", HandleAsync)
            .Is(Subjects.Studies, "readGaugeStudy", "A study with its readings and its analysis of variance, or what is missing for one.");

    /// <param name="number" example="GS-0002">The study's number.</param>
    public static async Task<Results<Ok<StudyAnswer>, Problem>> HandleAsync(
        string number,
        ReadGaugeStudy use,
        CancellationToken cancellation
    ) =>
        await use.RunAsync(number, cancellation) is { } study
            ? TypedResults.Ok(study)
            : ProblemAnswers.From(GaugeStudyReader.Unknown(number));

    /// <summary>The study of that number; null when there is none.</summary>
    public async Task<StudyAnswer?> RunAsync(string number, CancellationToken cancellation) =>
        await studies.FindAsync(number, cancellation) is [var study] ? StudyAnswer.Of(study) : null;
}
