using System.Text;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;

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

    /// <summary>Runs the command and answers over HTTP.</summary>
    public async Task<IResult> RunAsync(Func<CancellationToken, Task<Answer>> decide) => ResultOf(await WriteAsync(decide));

    /// <summary>Runs the command of an HTTP request and gives back what happened.</summary>
    public Task<WrittenAnswer> WriteAsync(Func<CancellationToken, Task<Answer>> decide)
    {
        var context = accessor.HttpContext!;
        return book.WriteAsync(RequestOf(context), JsonRules.Options, decide, context.RequestAborted);
    }

    /// <summary>What happened as an HTTP answer.</summary>
    public static IResult ResultOf(WrittenAnswer written) =>
        written switch
        {
            { KeyReused: true } => ProblemAnswers.Of(ProblemKinds.KeyReused),
            { AlreadyShown: true } => ProblemAnswers.Of(ProblemKinds.SecretAlreadyShown),
            { Refusal: { } refusal } => ProblemAnswers.From(refusal),
            _ => Results.Text(written.Json, "application/json", Encoding.UTF8, written.Status),
        };

    /// <summary>Runs a command of a page, whose form carries its own key, and gives back what happened.</summary>
    public Task<WrittenAnswer> RunPageAsync(string? formKey, Func<CancellationToken, Task<Answer>> decide)
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
