using Serilog.Events;
using Traceability.Web.Http;

namespace Traceability.Web.Hosting;

/// <summary>What the log says of a request: its path, but not the certificate's key that a verify address ends in.</summary>
public static class RequestLine
{
    private const string Verify = "/verify/";

    /// <summary>The values of the log line.</summary>
    public static IEnumerable<LogEventProperty> Properties(HttpContext context, string path, double elapsedMs, int status) =>
        [
            new("RequestMethod", new ScalarValue(context.Request.Method)),
            new("RequestPath", new ScalarValue(WithoutKey(path))),
            new("StatusCode", new ScalarValue(status)),
            new("Elapsed", new ScalarValue(elapsedMs)),
        ];

    /// <summary>
    /// Those who ask for the service's health every few seconds would fill the log, unless they hear that it is not ready; what fails
    /// elsewhere is an error.
    /// </summary>
    public static LogEventLevel Level(HttpContext context, double elapsedMs, Exception? failure) =>
        context.Request.Path.StartsWithSegments(Addresses.Health)
            ? context.Response.StatusCode < StatusCodes.Status400BadRequest
                ? LogEventLevel.Debug
                : LogEventLevel.Information
            : failure is not null || context.Response.StatusCode >= StatusCodes.Status500InternalServerError
                ? LogEventLevel.Error
                : LogEventLevel.Information;

    private static string WithoutKey(string path) =>
        OnOneLine(
            path.IndexOf(Verify, StringComparison.OrdinalIgnoreCase) is >= 0 and var at ? path[..(at + Verify.Length)] + "..." : path
        );

    /// <summary>
    /// A path may hold line breaks and terminal codes (%0d%0a): written as they came they would make lines that nobody logged.
    /// </summary>
    private static string OnOneLine(string path) =>
        path.Any(char.IsControl) ? string.Concat(path.Select(c => char.IsControl(c) ? $"%{(int)c:x2}" : $"{c}")) : path;
}
