using Npgsql;
using Traceability.Persistence.Embedded;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Hosting;

/// <summary>
/// The database behind the service: the server named by <c>ConnectionStrings:Traceability</c>, or a private PostgreSQL in the data folder
/// that starts and ends with the service. Until it is migrated every request but those for the service's health is told to come again.
/// </summary>
public sealed class WorkshopDatabase(IConfiguration configuration, ILogger<WorkshopDatabase> log)
    : IHostedLifecycleService,
        IAsyncDisposable
{
    /// <summary>Four segments of PostgreSQL's write-ahead log.</summary>
    private const long LeastRoomBytes = 64L << 20;

    private string? owner;
    private string? service;
    private EmbeddedPostgres? embedded;
    private Task? preparing;

    /// <summary>For the short commands: use the private server of a service that is running on the same data folder.</summary>
    public bool JoinRunning { get; init; }

    /// <summary>Connects as the owner of the tables; for migrations and logins only.</summary>
    public string OwnerConnectionString => owner ?? throw new InvalidOperationException("the database has not been started");

    /// <summary>Connects with the application's rights, and no more where the server allows logins of their own.</summary>
    public string AppConnectionString => service ?? throw new InvalidOperationException("the database has not been started");

    /// <summary>
    /// What there is too little of on the disk of the private server: below it, a record in work might not end. Null with room, and of a
    /// server that others look after.
    /// </summary>
    public string? LittleRoom =>
        embedded is null ? null
        : new DriveInfo(DataFolder.Of(configuration)).AvailableFreeSpace is var free and < LeastRoomBytes
            ? $"only {free >> 20} MB are left on the disk of {DataFolder.Of(configuration)}: make room"
        : null;

    /// <summary>True once the tables are as this version of the service needs them.</summary>
    public bool Migrated { get; private set; }

    /// <summary>Starts or finds the server and brings the tables up to date.</summary>
    public async Task PrepareAsync(CancellationToken cancellationToken)
    {
        var (migrations, given) = (
            configuration.GetConnectionString("TraceabilityMigrations"),
            configuration.GetConnectionString("Traceability")
        );
        var server = migrations ?? given;
        var tables = new TablesUpToDate(log);
        // What needs no server is done while it starts; of a cluster that is yet to be made it is known that all tables are missing.
        var warming = Task.Run(
            () => tables.Warm(server is null && !EmbeddedPostgres.IsMade(DataFolder.Of(configuration))),
            cancellationToken
        );
        _ = Task.Run(TablesUpToDate.WarmQueries, cancellationToken);
        owner = Pooled(server ?? await StartEmbeddedAsync(cancellationToken));
        await warming;
        var logins = new DatabaseLogins(log);
        await tables.BringAsync(
            OwnerConnectionString,
            async () =>
            {
                service = Pooled(await logins.ForServiceAsync(OwnerConnectionString, migrations is null ? null : given, cancellationToken));
                await logins.ForReadersAsync(
                    OwnerConnectionString,
                    configuration.GetConnectionString("TraceabilityReader"),
                    cancellationToken
                );
            },
            cancellationToken
        );
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
            await preparing.ContinueWith(
                _ => { },
                CancellationToken.None,
                TaskContinuationOptions.ExecuteSynchronously,
                TaskScheduler.Default
            );
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
            new EmbeddedPostgresOptions(DataFolder.Of(configuration))
            {
                ProgramsFolder = configuration["TRACEABILITY_POSTGRES_PROGRAMS"],
                JoinRunning = JoinRunning,
            },
            log,
            cancellationToken
        );
        return embedded.ConnectionString;
    }

    /// <summary>More connections than about four per core make PostgreSQL slower, not faster; measured.</summary>
    private static string Pooled(string connectionString)
    {
        var builder = new NpgsqlConnectionStringBuilder(connectionString);
        builder.MaxPoolSize = Math.Min(builder.MaxPoolSize, Math.Max(8, 4 * Environment.ProcessorCount));
        if (builder.MaxAutoPrepare == 0)
        {
            builder.MaxAutoPrepare = 100;
            builder.AutoPrepareMinUsages = 2;
        }

        // Nothing of ours outlives its transaction in a session - no settings, no temporary tables, no session locks - so there is nothing
        // to reset.
        builder.NoResetOnClose = true;

        return builder.ConnectionString;
    }
}
