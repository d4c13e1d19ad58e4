using Microsoft.AspNetCore.Diagnostics;
using Traceability.Web.Http;

namespace Traceability.Web.Hosting;

/// <summary>
/// Turns exceptions into problems: what a client sent wrong becomes a 4xx that says so; anything else is our fault, logged whole and told
/// apart.
/// </summary>
public sealed class ExceptionAnswers(Readiness readiness, ILogger<ExceptionAnswers> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (exception is OperationCanceledException && httpContext.RequestAborted.IsCancellationRequested)
        {
            httpContext.Response.StatusCode = 499;
            return true;
        }

        var (status, detail, field) = exception switch
        {
            BadHttpRequestException { StatusCode: 415 } => (415, null, null),
            BadHttpRequestException bad when InputWords.Of(bad) is var (words, where) => (bad.StatusCode, words, where),
            System.Text.DecoderFallbackException => (400, InputTexts.IsNotUtf8, null),
            _ when Unkeepable(exception) => (400, InputTexts.CannotBeKept, null),
            _ when DatabaseFailure.Is(exception) => (503, null, null),
            _ => (500, (string?)null, (string?)null),
        };
        if (status >= 500)
        {
            readiness.Note(exception);
            log.LogError(exception, "request {RequestId} failed", httpContext.TraceIdentifier);
        }

        if (status == 503)
        {
            httpContext.Response.Headers.RetryAfter = DatabaseFailure.RetryAfterSeconds;
        }

        await (
            PageProblems.IsPage(httpContext)
                ? PageProblems.WriteBareAsync(httpContext, status)
                : ProblemAnswers.OfStatus(status, detail, field).ExecuteAsync(httpContext)
        );
        return true;
    }

    /// <summary>
    /// Class 22 of SQLSTATE, data exception: a text with U+0000 in an address, a number or time beyond what a column holds.
    /// </summary>
    private static bool Unkeepable(Exception e) =>
        (e as Npgsql.PostgresException ?? e.InnerException as Npgsql.PostgresException)?.SqlState.StartsWith("22", StringComparison.Ordinal)
        == true;
}
