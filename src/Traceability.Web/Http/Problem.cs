using System.Globalization;
using Traceability.Domain.Work;

namespace Traceability.Web.Http;

/// <summary>
/// A problem as the answer of a call. Which statuses a call can answer with is said by <c>Description/PossibleProblems</c>.
/// </summary>
public sealed class Problem(ProblemKind kind, string? detail, Refusal? refusal) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        var document = new ProblemDocument(
            kind.Address,
            ProblemTexts.TitleOf(kind),
            kind.Status,
            detail ?? $"{ProblemTexts.MeaningOf(kind)} {ProblemTexts.RemedyOf(kind)}",
            httpContext.TraceIdentifier,
            refusal is { Errors.Count: > 0 } ? refusal.Errors : null,
            refusal is { Checks.Count: > 0 } ? refusal.Checks : null
        );
        httpContext.Response.StatusCode = kind.Status;
        if (refusal?.Wait is { } wait)
        {
            httpContext.Response.Headers.RetryAfter = ((int)Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
        }

        if (kind.Status == StatusCodes.Status503ServiceUnavailable && httpContext.Response.Headers.RetryAfter.Count == 0)
        {
            httpContext.Response.Headers.RetryAfter = DatabaseFailure.RetryAfterSeconds;
        }

        return httpContext.Response.WriteAsJsonAsync(document, JsonRules.Options, ProblemAnswers.MediaType, httpContext.RequestAborted);
    }
}
