using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Http;

/// <summary>
/// Runs a command through the record book for one HTTP request: takes the Idempotency-Key and a hash of the whole request but its PIN with
/// it, and turns the outcome into an HTTP answer.
/// </summary>
public sealed class Writes(RecordBook book, TimeProvider clock, IHttpContextAccessor accessor)
{
    private const string BodyHash = "body-hash";

    /// <summary>The record book, for what a handler needs inside its delegate.</summary>
    public RecordBook Book => book;

    /// <summary>Runs a command that makes something and answers over HTTP.</summary>
    public async Task<Results<Recorded<T>, Problem>> RecordAsync<T>(Func<CancellationToken, Task<Answer<T>>> decide) =>
        RecordedAs<T>(await WriteAsync(decide));

    /// <summary>Runs a command that changes how something stands and answers over HTTP.</summary>
    public async Task<Results<Changed<T>, Problem>> ChangeAsync<T>(Func<CancellationToken, Task<Answer<T>>> decide) =>
        ChangedAs<T>(await WriteAsync(decide));

    /// <summary>Runs the command of an HTTP request and gives back what happened.</summary>
    public Task<WrittenAnswer> WriteAsync<TAnswer>(Func<CancellationToken, Task<TAnswer>> decide)
        where TAnswer : Answer
    {
        var context = accessor.HttpContext!;
        return book.WriteAsync(RequestOf(context), JsonRules.Options, decide, context.RequestAborted);
    }

    /// <summary>What was made, or why not, as the answer of a call.</summary>
    public static Results<Recorded<T>, Problem> RecordedAs<T>(WrittenAnswer written) =>
        ProblemOf(written) is { } problem ? problem : new Recorded<T>(written);

    /// <summary>How it stands now, or why nothing changed, as the answer of a call.</summary>
    public static Results<Changed<T>, Problem> ChangedAs<T>(WrittenAnswer written) =>
        ProblemOf(written) is { } problem ? problem : new Changed<T>(written);

    private static Problem? ProblemOf(WrittenAnswer written) =>
        written switch
        {
            { KeyReused: true } => ProblemAnswers.Of(ProblemKinds.KeyReused),
            { AlreadyShown: true } => ProblemAnswers.Of(ProblemKinds.SecretAlreadyShown),
            { Refusal: { } refusal } => ProblemAnswers.From(refusal),
            _ => null,
        };

    /// <summary>Runs a command of a page, whose form carries its own key, and gives back what happened.</summary>
    public Task<WrittenAnswer> RunPageAsync<TAnswer>(string? formKey, Func<CancellationToken, Task<TAnswer>> decide)
        where TAnswer : Answer
    {
        var context = accessor.HttpContext!;
        if (string.IsNullOrEmpty(formKey))
        {
            return book.WriteAsync(WriteRequest.Unkeyed, JsonRules.Options, decide, context.RequestAborted);
        }

        var form = context.Request.HasFormContentType
            ? string.Join(
                '&',
                context.Request.Form.Where(f => !f.Key.StartsWith('_')).OrderBy(f => f.Key).Select(f => $"{f.Key}={f.Value}")
            )
            : "";
        var request = new WriteRequest(
            SessionAuthentication.CallerOf(context),
            formKey,
            SessionAuthentication.HashOf($"{context.Request.Path}{context.Request.QueryString}\n{form}")
        );
        return book.WriteAsync(request, JsonRules.Options, decide, context.RequestAborted);
    }

    /// <summary>Who acts and when: now, unless an earlier time was stated.</summary>
    public Stamp Stamp(Guid by, DateTimeOffset? occurredAt = null)
    {
        var now = Now;
        return new(by, ToMicroseconds(occurredAt ?? now), now, new OrderedIds(now).Next);
    }

    /// <summary>The server's clock, to the microsecond that PostgreSQL keeps.</summary>
    public DateTimeOffset Now => ToMicroseconds(clock.GetUtcNow());

    /// <summary>Reads the body once for its hash, when the request carries an Idempotency-Key.</summary>
    public static async Task HashBodyAsync(HttpContext context, RequestDelegate next)
    {
        if (
            HttpMethods.IsPost(context.Request.Method)
            && context.Request.Headers.ContainsKey("Idempotency-Key")
            && !KeepsNothing.Is(context)
        )
        {
            context.Request.EnableBuffering();
            context.Items[BodyHash] = await BodyWithoutSecrets.HashAsync(context.Request, context.RequestAborted);
            context.Request.Body.Position = 0;
        }

        await next(context);
    }

    private static WriteRequest RequestOf(HttpContext context)
    {
        var key = context.Request.Headers["Idempotency-Key"].ToString();
        if (key.Length > 200)
        {
            throw new BadHttpRequestException("an Idempotency-Key has at most 200 characters");
        }

        return key.Length == 0 || KeepsNothing.Is(context)
            ? WriteRequest.Unkeyed
            : new(
                SessionAuthentication.CallerOf(context),
                key,
                SessionAuthentication.HashOf(
                    $"{context.Request.Method} {context.Request.Path}{context.Request.QueryString}\n{context.Items[BodyHash]}"
                )
            );
    }

    private static DateTimeOffset ToMicroseconds(DateTimeOffset time) => new(time.UtcTicks / 10 * 10, TimeSpan.Zero);
}
