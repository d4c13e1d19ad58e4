using System.Net.Sockets;
using Microsoft.AspNetCore.Connections;
using Npgsql;
using Serilog.Events;
using Traceability.Persistence.Embedded;

namespace Traceability.Web.Hosting;

/// <summary>
/// What keeps the service, or a short command, from starting, in one line that says what to do. Anything else is our fault and keeps its
/// stack trace.
/// </summary>
public static class StartFailure
{
    private const string HostsLog = "Microsoft.Extensions.Hosting.Internal.Host";

    /// <summary>The line for a failure that whoever started it can mend; null for any other.</summary>
    public static string? InOneLine(Exception failure) =>
        failure switch
        {
            AggregateException { InnerExceptions: [var first, ..] } => InOneLine(first),
            IOException { InnerException: AddressInUseException } taken =>
                $"{taken.Message} Stop what uses it, or set TRACEABILITY_URL to another address.",
            SocketException { SocketErrorCode: SocketError.AccessDenied or SocketError.AddressNotAvailable } refused =>
                $"the address of TRACEABILITY_URL cannot be listened on: {refused.Message}. Set it to an address of this machine and a"
                    + " port above 1023.",
            EmbeddedPostgresException own => own.Message,
            NpgsqlException database => $"the database named by ConnectionStrings__Traceability cannot be used: {database.Message}",
            StartSettingException setting => setting.Message,
            StoreVersionException store => store.Message,
            UnauthorizedAccessException or IOException => $"a file or folder cannot be used: {failure.Message}",
            _ => null,
        };

    /// <summary>True for the framework's own account of such a failure, a stack trace: the one line takes its place.</summary>
    public static bool IsTold(LogEvent line) =>
        line.Exception is { } failure
        && line.Properties.GetValueOrDefault("SourceContext") is ScalarValue { Value: HostsLog }
        && InOneLine(failure) is not null;

    /// <summary>Says it where who started the program sees it.</summary>
    /// <returns>1, the exit code.</returns>
    public static int Say(string line)
    {
        Console.Error.WriteLine($"cannot start: {line.ReplaceLineEndings(" ")}");
        return 1;
    }
}

/// <summary>A setting that nothing can be started with.</summary>
public sealed class StartSettingException(string message) : Exception(message);
