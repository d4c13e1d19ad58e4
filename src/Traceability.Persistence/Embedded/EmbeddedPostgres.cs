using Microsoft.Extensions.Logging;
using Npgsql;

namespace Traceability.Persistence.Embedded;

/// <summary>
/// A private PostgreSQL in the data folder, looked after by this process: made when missing, taken over when a killed owner left it
/// running, started again when it dies, stopped cleanly at the end. It listens on a Unix socket only.
/// </summary>
public sealed class EmbeddedPostgres : IAsyncDisposable
{
    public const string OwnerRole = "traceability_owner";
    public const string DatabaseName = "traceability";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly ClusterFolder folder;
    private readonly FileStream? ownership;
    private PostmasterSupervisor? supervisor;

    private EmbeddedPostgres(ClusterFolder folder, FileStream? ownership, ServerPrograms programs)
    {
        this.folder = folder;
        this.ownership = ownership;
        Programs = programs;
    }

    /// <summary>Where pg_dump and pg_restore of the same version lie.</summary>
    public ServerPrograms Programs { get; }

    /// <summary>To the service's database as its owner.</summary>
    public string ConnectionString => ConnectionStringFor(DatabaseName);

    /// <summary>The server's process now; another one after a restart.</summary>
    public int ProcessId => supervisor?.Current.ProcessId ?? PostmasterFile.Read(folder.Data)?.ProcessId ?? 0;

    /// <summary>The running server was left behind by a killed owner.</summary>
    public bool Adopted => supervisor?.Current.Adopted ?? false;

    /// <summary>How often the server had to be started again since <see cref="StartAsync"/>.</summary>
    public int Restarts => supervisor?.Restarts ?? 0;

    private string Maintenance => $"Host={folder.Socket};Port=5432;Username={OwnerRole};Database=postgres;Pooling=false;Timeout=5";

    /// <exception cref="EmbeddedPostgresException">It cannot run here; the message says why and what to do.</exception>
    public static async Task<EmbeddedPostgres> StartAsync(
        EmbeddedPostgresOptions options,
        ILogger log,
        CancellationToken cancellation = default
    )
    {
        if (!OperatingSystem.IsLinux())
            throw new EmbeddedPostgresException("The private PostgreSQL runs on Linux only.");
        var folder = new ClusterFolder(options.DataFolder);
        var user = await ServerUser.ChooseAsync(folder.Major is null ? null : folder.Data, cancellation);
        await folder.MakeReachableAsync(user, cancellation);
        var ownership = folder.TryLock();
        if (ownership is null && !options.JoinRunning)
            throw new EmbeddedPostgresException(
                $"Another instance already serves the data folder {folder.Root}: stop it, or choose another folder in TRACEABILITY_DATA."
            );

        EmbeddedPostgres? server = null;
        try
        {
            var programs = await ServerPrograms.FindAsync(options.ProgramsFolder, folder.Major, cancellation);
            server = new EmbeddedPostgres(folder, ownership, programs);
            if (ownership is not null)
            {
                await ClusterSetup.PrepareAsync(folder, programs, user, options.Durable, log, cancellation);
                var launcher = new PostmasterLauncher(folder, programs, user, options.Durable, server.Maintenance, log);
                server.supervisor = await PostmasterSupervisor.StartAsync(launcher, log, cancellation);
            }

            await server.EnsureDatabaseAsync(cancellation);
            log.LogInformation(
                "PostgreSQL {Major} {How} in {Folder} (process {Pid})",
                programs.Major,
                ownership is null ? "joined"
                    : server.Adopted ? "taken over"
                    : "started",
                folder.Data,
                server.ProcessId
            );
            return server;
        }
        catch
        {
            if (server is not null)
                await server.DisposeAsync();
            if (ownership is not null)
                await ownership.DisposeAsync();
            throw;
        }
    }

    /// <summary>Whether the data folder holds a cluster already.</summary>
    public static bool IsMade(string dataFolder) => new ClusterFolder(dataFolder).Major is not null;

    /// <summary>To another database of the same server, as its owner.</summary>
    public string ConnectionStringFor(string database) =>
        // At more connections than about four a core PostgreSQL gets slower, not faster.
        $"Host={folder.Socket};Port=5432;Username={OwnerRole};Database={database};"
        + $"Maximum Pool Size={4 * Environment.ProcessorCount};Max Auto Prepare=50;Auto Prepare Min Usages=2";

    public async ValueTask DisposeAsync()
    {
        // Sockets left in the pool would greet the next server of this folder with an error.
        await using (var pool = new NpgsqlConnection(ConnectionString))
            NpgsqlConnection.ClearPool(pool);
        if (supervisor is not null)
            await supervisor.DisposeAsync();
        if (ownership is null)
            return;
        folder.RemoveSocketOutside();
        await ownership.DisposeAsync();
    }

    private async Task EnsureDatabaseAsync(CancellationToken cancellation)
    {
        for (var giveUp = DateTime.UtcNow + Patience; ; await Task.Delay(TimeSpan.FromMilliseconds(50), cancellation))
        {
            try
            {
                await using var connection = new NpgsqlConnection(Maintenance);
                await connection.OpenAsync(cancellation);
                await using var ask = new NpgsqlCommand($"select 1 from pg_database where datname = '{DatabaseName}'", connection);
                if (await ask.ExecuteScalarAsync(cancellation) is not null)
                    return;
                await using var make = new NpgsqlCommand($"create database {DatabaseName}", connection);
                await make.ExecuteNonQueryAsync(cancellation);
                return;
            }
            catch (NpgsqlException e) when (e.IsTransient && DateTime.UtcNow < giveUp)
            {
                // A server taken over while it was being told to stop: the supervisor brings up the next one.
            }
        }
    }
}
