using System.Collections.Concurrent;
using Npgsql;

namespace Traceability.Web.Tests.Server;

/// <summary>
/// The one PostgreSQL of a test run, with a fresh database for whoever asks. It comes from, in this order: the server named in
/// TRACEABILITY_TEST_POSTGRES; a container, when an engine answers and has or can pull the image; a private cluster in a temporary
/// folder. TRACEABILITY_TEST_SERVER (given, container, private) insists on one of them.
/// </summary>
public sealed class PostgresServer
{
    private static readonly Lazy<Task<PostgresServer>> Run = new(StartAsync);

    private readonly ConcurrentDictionary<string, Lazy<Task<string>>> templates = new();
    private readonly string administrator;

    private PostgresServer(string origin, string administrator)
    {
        Origin = origin;
        this.administrator = administrator;
    }

    /// <summary>"given", "container" or "private".</summary>
    public string Origin { get; }

    /// <summary>The same server for all tests of this process; it ends with the process.</summary>
    public static Task<PostgresServer> SharedAsync() => Run.Value;

    /// <summary>An own database as the administrator; a copy of <paramref name="template"/>, to which nobody may be connected.</summary>
    public async Task<string> CreateDatabaseAsync(string? template = null)
    {
        var name = $"test_{Guid.NewGuid():N}";
        await using var connection = new NpgsqlConnection(ConnectionStringFor("postgres", pooled: false));
        await connection.OpenAsync();
        await using var create = new NpgsqlCommand($"create database {name} template {template ?? "template0"}", connection);
        await create.ExecuteNonQueryAsync();
        return ConnectionStringFor(name);
    }

    /// <summary>
    /// An own copy of a database that <paramref name="prepare"/> fills once per run, given its connection string: migrating takes a
    /// second, copying a twentieth of that.
    /// </summary>
    public async Task<string> CreateDatabaseAsync(string templateKey, Func<string, Task> prepare) =>
        await CreateDatabaseAsync(await templates.GetOrAdd(templateKey, _ => new(() => PrepareTemplateAsync(prepare))).Value);

    private async Task<string> PrepareTemplateAsync(Func<string, Task> prepare)
    {
        var connectionString = await CreateDatabaseAsync();
        await prepare(connectionString);
        // A connection that idles in a pool counts as a user of the template.
        NpgsqlConnection.ClearAllPools();
        return new NpgsqlConnectionStringBuilder(connectionString).Database!;
    }

    private string ConnectionStringFor(string database, bool pooled = true) =>
        new NpgsqlConnectionStringBuilder(administrator)
        {
            Database = database,
            Pooling = pooled,
            MaxPoolSize = 4 * Environment.ProcessorCount,
            // A workshop whose tests are over keeps no connections: on a quick machine they filled the server within five minutes.
            ConnectionIdleLifetime = 5,
            ConnectionPruningInterval = 1,
            MaxAutoPrepare = 50,
            AutoPrepareMinUsages = 2,
            IncludeErrorDetail = true,
        }.ConnectionString;

    private static async Task<PostgresServer> StartAsync()
    {
        var wanted = Environment.GetEnvironmentVariable("TRACEABILITY_TEST_SERVER");
        var given = Environment.GetEnvironmentVariable("TRACEABILITY_TEST_POSTGRES");
        if (wanted is null or "given" && !string.IsNullOrEmpty(given))
            return new PostgresServer("given", given!);

        if (wanted is null or "container")
        {
            var container = await ContainerPostgres.TryStartAsync();
            if (container.ConnectionString is { } connectionString)
                return new PostgresServer("container", connectionString);
            if (wanted is not null)
                throw new InvalidOperationException($"No container for the tests: {container.WhyNot}");
        }

        return wanted is null or "private"
            ? new PostgresServer("private", await PrivatePostgres.StartAsync())
            : throw new InvalidOperationException($"TRACEABILITY_TEST_SERVER={wanted}: there is no such server.");
    }
}
