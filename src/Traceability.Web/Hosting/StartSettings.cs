using Npgsql;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Hosting;

/// <summary>
/// The settings that the start depends on, looked at before anything is started: a misspelt one is named in one line and is not passed
/// over.
/// </summary>
public static class StartSettings
{
    private static readonly string[] ConnectionStrings = ["Traceability", "TraceabilityMigrations", "TraceabilityReader"];

    /// <exception cref="StartSettingException">One of them cannot be used.</exception>
    public static void Check(IConfiguration configuration)
    {
        var problem =
            Zone(configuration["TRACEABILITY_TIMEZONE"])
            ?? WorkshopLanguage.Problem(configuration)
            ?? Address(configuration["TRACEABILITY_URL"])
            ?? Folder(DataFolder.Of(configuration))
            ?? ConnectionStrings
                .Select(name => Connection(name, configuration.GetConnectionString(name)))
                .FirstOrDefault(p => p is not null);
        if (problem is not null)
        {
            throw new StartSettingException(problem);
        }
    }

    private static string? Zone(string? zone) =>
        string.IsNullOrWhiteSpace(zone) || TimeZoneInfo.TryFindSystemTimeZoneById(zone, out _)
            ? null
            : $"TRACEABILITY_TIMEZONE is '{zone}', which this machine does not know. Write a name such as Europe/Berlin, or leave it"
                + " out for UTC.";

    private static string? Address(string? addresses)
    {
        foreach (var address in (addresses ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            try
            {
                var parsed = BindingAddress.Parse(address);
                if (parsed.Scheme is "http" or "https" && parsed.PathBase.Length == 0)
                {
                    continue;
                }
            }
            catch (FormatException)
            {
                // Said below.
            }

            return $"TRACEABILITY_URL is '{address}', which is no address to listen on. Write one such as http://127.0.0.1:5080.";
        }

        return null;
    }

    private static string? Folder(string folder)
    {
        try
        {
            var logs = Directory.CreateDirectory(Path.Combine(folder, "logs"));
            using (
                new FileStream(
                    Path.Combine(logs.FullName, $".{Environment.ProcessId}"),
                    FileMode.Create,
                    FileAccess.Write,
                    FileShare.None,
                    1,
                    FileOptions.DeleteOnClose
                )
            )
            {
                return null;
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"the data folder {folder} cannot be written to: {e.Message} Set TRACEABILITY_DATA to a folder of the service's own.";
        }
    }

    private static string? Connection(string name, string? text)
    {
        try
        {
            return text is null || new NpgsqlConnectionStringBuilder(text).Host is { Length: > 0 }
                ? null
                : $"ConnectionStrings__{name} names no host. Write it as Host=...;Database=...;Username=...;Password=...";
        }
        catch (Exception e) when (e is ArgumentException or FormatException or KeyNotFoundException or NotSupportedException)
        {
            // The text may hold a password: it is not said again.
            return $"ConnectionStrings__{name} cannot be read: {e.Message} Write it as Host=...;Database=...;Username=...;Password=...";
        }
    }
}
