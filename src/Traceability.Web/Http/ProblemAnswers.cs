using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Work;
using Traceability.Web.Hosting;

namespace Traceability.Web.Http;

/// <summary>Errors as RFC 9457 problem documents: what happened, what was kept, what to do; always with the request's id.</summary>
public static class ProblemAnswers
{
    /// <summary>A refusal of the domain as a problem.</summary>
    public static IResult From(Refusal refusal)
    {
        var (status, title) = refusal.Kind switch
        {
            RefusalKind.Invalid => (400, "The request is not valid."),
            RefusalKind.Forbidden => (403, "This is not for you to do."),
            RefusalKind.NotFound => (404, "There is no such thing."),
            RefusalKind.Unavailable => (503, "Nothing can be recorded now."),
            _ => (409, refusal.Checks.Count > 0 ? "The gate is closed." : "Not possible in this state."),
        };
        var more = new Dictionary<string, object?>();
        if (refusal.Errors.Count > 0)
        {
            more["errors"] = refusal.Errors;
        }

        if (refusal.Checks.Count > 0)
        {
            more["checks"] = refusal.Checks;
        }

        return Results.Problem(refusal.Message, null, status, title, extensions: more);
    }

    /// <summary>The same key came with another body.</summary>
    public static IResult KeyReused() => Results.Problem(
        "This Idempotency-Key was used for another request. Nothing was recorded. Use a new key for a new command.", null, 422, "The key was used for another request.");

    /// <summary>Adds the request's id to every problem, so that it can be found in the log.</summary>
    public static void Customise(ProblemDetailsContext context)
    {
        context.ProblemDetails.Extensions["requestId"] = context.HttpContext.TraceIdentifier;
        context.ProblemDetails.Extensions.Remove("traceId");
        if (context.ProblemDetails.Status == StatusCodes.Status503ServiceUnavailable && context.HttpContext.Response.Headers.RetryAfter.Count == 0)
        {
            context.HttpContext.Response.Headers.RetryAfter = DatabaseFailure.RetryAfterSeconds;
        }
    }
}

/// <summary>Turns exceptions into problems: what a client sent wrong becomes a 4xx that says so; anything else is our fault, logged whole and told apart.</summary>
public sealed class ExceptionAnswers(IProblemDetailsService problems, Readiness readiness, ILogger<ExceptionAnswers> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (exception is OperationCanceledException && httpContext.RequestAborted.IsCancellationRequested)
        {
            httpContext.Response.StatusCode = 499;
            return true;
        }

        var details = exception switch
        {
            BadHttpRequestException bad => new ProblemDetails { Status = bad.StatusCode, Title = TitleOf(bad.StatusCode), Detail = bad.InnerException?.Message ?? bad.Message },
            System.Text.DecoderFallbackException => new() { Status = 400, Title = TitleOf(400), Detail = "The body is not text in UTF-8: some of its bytes stand for no character. Nothing was recorded. Save the file as UTF-8 and send it again." },
            _ when Unkeepable(exception) => new() { Status = 400, Title = TitleOf(400), Detail = "A value of this request cannot be kept: a character or number that the database does not know. Nothing was recorded." },
            _ when DatabaseFailure.Is(exception) => new()
            {
                Status = 503,
                Title = "The database does not answer.",
                Detail = "Send the same again in a moment, a command with the same Idempotency-Key: what was recorded after all is then not recorded twice.",
            },
            _ => new ProblemDetails { Status = 500, Title = "The service failed.", Detail = "Nothing of this request was recorded. Tell whoever looks after the service the request id." },
        };
        if (details.Status >= 500)
        {
            readiness.Note(exception);
            log.LogError(exception, "request {RequestId} failed", httpContext.TraceIdentifier);
        }

        if (details.Status == 503)
        {
            httpContext.Response.Headers.RetryAfter = DatabaseFailure.RetryAfterSeconds;
        }

        if (PageProblems.IsPage(httpContext))
        {
            await PageProblems.WriteBareAsync(httpContext, details.Status!.Value);
            return true;
        }

        httpContext.Response.StatusCode = details.Status!.Value;
        return await problems.TryWriteAsync(new() { HttpContext = httpContext, ProblemDetails = details, Exception = exception });
    }

    /// <summary>Class 22 of SQLSTATE, data exception: a text with U+0000 in an address, a number or time beyond what a column holds.</summary>
    private static bool Unkeepable(Exception e) =>
        (e as Npgsql.PostgresException ?? e.InnerException as Npgsql.PostgresException)?.SqlState.StartsWith("22", StringComparison.Ordinal) == true;

    private static string TitleOf(int status) => status switch
    {
        413 => "The body is too large.",
        415 => "This kind of content is not taken here.",
        _ => "The request is not valid.",
    };
}
