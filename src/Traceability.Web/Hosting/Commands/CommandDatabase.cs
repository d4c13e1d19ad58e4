using Traceability.Migrations;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Hosting.Commands;

/// <summary>The database for a short command: the service's own, running or not.</summary>
public sealed class CommandDatabase : IAsyncDisposable
{
    private readonly WorkshopDatabase database;

    private CommandDatabase(WorkshopDatabase database) =>
        (this.database, Db) = (database, new WorkshopContext(WorkshopOptions.For(database.AppConnectionString)));

    /// <summary>The tables.</summary>
    public WorkshopContext Db { get; }

    /// <summary>Dossiers from them.</summary>
    public DossierReader Dossiers => new(Db, new RouteShelf());

    /// <summary>Starts or joins the server named by the environment.</summary>
    public static async Task<CommandDatabase> OpenAsync()
    {
        var configuration = new ConfigurationBuilder().AddEnvironmentVariables().Build();
        StartSettings.Check(configuration);
        var log = LoggerFactory.Create(l => l.AddSimpleConsole(c => c.SingleLine = true).SetMinimumLevel(LogLevel.Warning));
        var database = new WorkshopDatabase(configuration, log.CreateLogger<WorkshopDatabase>()) { JoinRunning = true };
        await database.PrepareAsync(CancellationToken.None);
        return new(database);
    }

    public async ValueTask DisposeAsync()
    {
        await Db.DisposeAsync();
        await database.DisposeAsync();
    }
}
