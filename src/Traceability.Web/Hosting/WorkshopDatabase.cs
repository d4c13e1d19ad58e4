using Npgsql;
using Traceability.Migrations;
using Traceability.Persistence.Embedded;

namespace Traceability.Web.Hosting;

/// <summary>
/// The database behind the service: the server named by <c>ConnectionStrings:Traceability</c>, or a private PostgreSQL in the data folder
/// that starts and ends with the service. Until it is migrated every request but those for the service's health is told to come again.
/// </summary>
public sealed class WorkshopDatabase(IConfiguration configuration, ILogger<WorkshopDatabase> log) : IHostedLifecycleService, IAsyncDisposable
{
    private string? owner;
    private EmbeddedPostgres? embedded;
    private Task? preparing;

    /// <summary>For the short commands: use the private server of a service that is running on the same data folder.</summary>
    public bool JoinRunning { get; init; }

    /// <summary>Connects as the owner of the tables; for migrations only.</summary>
    public string OwnerConnectionString => owner ?? throw new InvalidOperationException("the database has not been started");

    /// <summary>Connects as the application's role.</summary>
    public string AppConnectionString => WorkshopOptions.AsApp(OwnerConnectionString);

    /// <summary>True once the tables are as this version of the service needs them.</summary>
    public bool Migrated { get; private set; }

    /// <summary>Starts or finds the server and brings the tables up to date.</summary>
    public async Task PrepareAsync(CancellationToken cancellationToken)
    {
        var server = configuration.GetConnectionString("Traceability");
        var tables = new TablesUpToDate(log);
        // What needs no server is done while it starts; of a cluster that is yet to be made it is known that all tables are missing.
        var warming = Task.Run(() => tables.Warm(server is null && !EmbeddedPostgres.IsMade(DataFolder.Of(configuration))), cancellationToken);
        _ = Task.Run(TablesUpToDate.WarmQueries, cancellationToken);
        owner = Pooled(server ?? await StartEmbeddedAsync(cancellationToken));
        await warming;
        await tables.BringAsync(OwnerConnectionString, cancellationToken);
        Migrated = true;
    }

    /// <summary>Begins; meanwhile the web server is built and started, and says that the service is not ready.</summary>
    public Task StartingAsync(CancellationToken cancellationToken)
    {
        preparing = Task.Run(() => PrepareAsync(cancellationToken), cancellationToken);
        return Task.CompletedTask;
    }

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>The application counts as started when the database is ready, and does not start when it cannot be.</summary>
    public Task StartedAsync(CancellationToken cancellationToken) => preparing ?? Task.CompletedTask;

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public async ValueTask DisposeAsync()
    {
        if (preparing is not null)
        {
            // Another part of the service may have failed to start: a server that is being started must not be left behind.
            await preparing.ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
        }

        if (embedded is not null)
        {
            NpgsqlConnection.ClearAllPools();
            await embedded.DisposeAsync();
        }
    }

    private async Task<string> StartEmbeddedAsync(CancellationToken cancellationToken)
    {
        embedded = await EmbeddedPostgres.StartAsync(
            new EmbeddedPostgresOptions(DataFolder.Of(configuration)) { ProgramsFolder = configuration["TRACEABILITY_POSTGRES_PROGRAMS"], JoinRunning = JoinRunning }, log, cancellationToken);
        return embedded.ConnectionString;
    }

    /// <summary>More connections than about four per core make PostgreSQL slower, not faster; measured.</summary>
    private static string Pooled(string connectionString)
    {
        var builder = new NpgsqlConnectionStringBuilder(connectionString);
        builder.MaxPoolSize = Math.Min(builder.MaxPoolSize, Math.Max(8, 4 * Environment.ProcessorCount));
        if (builder.MaxAutoPrepare == 0)
        {
            builder.MaxAutoPrepare = 50;
            builder.AutoPrepareMinUsages = 2;
        }

        // Nothing of ours outlives its transaction in a session - no settings, no temporary tables, no session locks - so there is nothing to reset.
        builder.NoResetOnClose = true;

        return builder.ConnectionString;
    }
}
