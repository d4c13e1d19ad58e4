using Traceability.Domain.Gates;
using Traceability.Domain.Work;

namespace Traceability.Web.Http;

/// <summary>
/// A problem document (RFC 9457). <c>Type</c> is one of the addresses under /problems, <c>Errors</c> names what is wrong in which field,
/// <c>Checks</c> is everything that a closed gate asked, and <c>RequestId</c> finds the request in the log.
/// </summary>
public sealed record ProblemDocument(
    string Type,
    string Title,
    int Status,
    string Detail,
    string RequestId,
    IReadOnlyDictionary<string, string[]>? Errors,
    IReadOnlyList<GateCheck>? Checks
);

/// <summary>
/// Errors as problem documents: what happened, what was kept, what to do; whatever the client accepts, because nothing else can be said to
/// it.
/// </summary>
public static class ProblemAnswers
{
    /// <summary>The media type of a problem.</summary>
    public const string MediaType = "application/problem+json";

    /// <summary>A refusal of the domain as a problem.</summary>
    public static IResult From(Refusal refusal) =>
        new Answer(
            ProblemKinds.Find(refusal.Code) ?? throw new InvalidOperationException($"'{refusal.Code}' is not among the kinds of problems"),
            refusal.Message,
            refusal
        );

    /// <summary>A problem of a kind; without words of its own those of its kind.</summary>
    public static IResult Of(ProblemKind kind, string? detail = null) => new Answer(kind, detail, null);

    /// <summary>A problem of a status that the framework gave, with the field that is to blame where there is one.</summary>
    public static IResult OfStatus(int status, string? detail = null, string? field = null) =>
        new Answer(
            ProblemKinds.OfStatus(status) with
            {
                Status = status,
            },
            detail,
            field is null || detail is null ? null : Refusal.Invalid(field, detail)
        );

    private sealed class Answer(ProblemKind kind, string? detail, Refusal? refusal) : IResult
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
                httpContext.Response.Headers.RetryAfter = ((int)Math.Ceiling(wait.TotalSeconds)).ToString(
                    System.Globalization.CultureInfo.InvariantCulture
                );
            }

            if (kind.Status == StatusCodes.Status503ServiceUnavailable && httpContext.Response.Headers.RetryAfter.Count == 0)
            {
                httpContext.Response.Headers.RetryAfter = DatabaseFailure.RetryAfterSeconds;
            }

            return httpContext.Response.WriteAsJsonAsync(document, JsonRules.Options, MediaType, httpContext.RequestAborted);
        }
    }
}
