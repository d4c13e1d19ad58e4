using System.Diagnostics;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace Traceability.Web.Tests;

/// <summary>
/// Counts how often a workshop's service asks its database: statements sent together count once. The driver itself tells, so that nothing
/// goes past the count. What the service asks by itself once a second, what the workshop says of itself, is left out.
/// </summary>
internal sealed class DatabaseTrips : IDisposable
{
    private readonly ActivityListener listener;
    private int count;

    private DatabaseTrips(string database)
    {
        listener = new()
        {
            ShouldListenTo = source => source.Name == "Npgsql",
            Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.AllData,
            ActivityStopped = activity =>
            {
                if (
                    activity.Tags.Any(t => t.Key is "db.namespace" or "db.name" && t.Value == database)
                    && !activity.Tags.Any(t => t.Value?.Contains("FROM workshop_revisions", StringComparison.Ordinal) == true)
                )
                {
                    Interlocked.Increment(ref count);
                }
            },
        };
        ActivitySource.AddActivityListener(listener);
    }

    /// <summary>How often the database is asked while something is done.</summary>
    public static async Task<int> DuringAsync(Workshop workshop, Func<Task> act)
    {
        var connection = workshop.Services.GetRequiredService<IConfiguration>().GetConnectionString("Traceability");
        using var trips = new DatabaseTrips(new NpgsqlConnectionStringBuilder(connection).Database!);
        await act();
        return trips.count;
    }

    public void Dispose() => listener.Dispose();
}
