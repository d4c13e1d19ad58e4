using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Migrations;
using Traceability.Persistence.Book;
using Traceability.Persistence.Embedded;
using Traceability.Persistence.Model;

namespace Traceability.Web.Hosting;

/// <summary>
/// The database behind the service: the server named by <c>ConnectionStrings:Traceability</c>, or a private PostgreSQL in the data folder
/// that starts and ends with the service. Migrated before the first request is taken.
/// </summary>
public sealed class WorkshopDatabase(IConfiguration configuration, ILogger<WorkshopDatabase> log) : IHostedLifecycleService, IAsyncDisposable
{
    private string? owner;
    private EmbeddedPostgres? embedded;

    /// <summary>For the short commands: use the private server of a service that is running on the same data folder.</summary>
    public bool JoinRunning { get; init; }

    /// <summary>Connects as the owner of the tables; for migrations only.</summary>
    public string OwnerConnectionString => owner ?? throw new InvalidOperationException("the database has not been started");

    /// <summary>Connects as the application's role.</summary>
    public string AppConnectionString => WorkshopOptions.AsApp(OwnerConnectionString);

    /// <summary>True once the tables are as this version of the service needs them.</summary>
    public bool Migrated { get; private set; }

    /// <summary>Starts or finds the server and brings the tables up to date.</summary>
    public async Task StartingAsync(CancellationToken cancellationToken)
    {
        var warming = Task.Run(BuildModel, cancellationToken);
        owner = Pooled(configuration.GetConnectionString("Traceability") ?? await StartEmbeddedAsync(cancellationToken));
        await warming;
        await using var db = new WorkshopContext(WorkshopOptions.For(OwnerConnectionString));
        var pending = (await db.Database.GetPendingMigrationsAsync(cancellationToken)).ToList();
        if (pending.Count > 0)
        {
            log.LogInformation("bringing the tables up to date: {Migrations}", pending);
            await db.Database.MigrateAsync(cancellationToken);

            // A store that is older than the tables of film fates has films in it that nobody followed.
            await FilmFates.FillAsync(db, cancellationToken);
        }

        Migrated = true;
    }

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public async ValueTask DisposeAsync()
    {
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

    /// <summary>EF Core builds its model once, without a database: half a second that can pass while the server starts.</summary>
    private static void BuildModel()
    {
        using var db = new WorkshopContext(WorkshopOptions.For("Host=localhost"));
        _ = db.Model;
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
