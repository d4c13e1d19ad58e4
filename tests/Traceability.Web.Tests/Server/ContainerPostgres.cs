using Testcontainers.PostgreSql;
using Traceability.Persistence.Embedded;

namespace Traceability.Web.Tests.Server;

/// <summary>PostgreSQL in a container, where an engine is at hand.</summary>
internal static class ContainerPostgres
{
    public const string PinnedImage = "postgres:17-alpine";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    public static async Task<(string? ConnectionString, string? WhyNot)> TryStartAsync()
    {
        if (!await ContainerEngine.AnswersAsync())
            return (null, "no container engine answers.");
        var image = Environment.GetEnvironmentVariable("TRACEABILITY_TEST_IMAGE") is { Length: > 0 } other ? other : PinnedImage;
        using var patience = new CancellationTokenSource(Patience);
        var container = new PostgreSqlBuilder(image)
            .WithUsername(EmbeddedPostgres.OwnerRole)
            .WithDatabase(EmbeddedPostgres.DatabaseName)
            .WithCommand("-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off", "-c", "max_connections=300")
            .Build();
        try
        {
            await container.StartAsync(patience.Token);
        }
        catch (Exception e)
        {
            // The engine is there but cannot pull or run the image: the tests need a server, not this one.
            await container.DisposeAsync();
            return (null, $"{image} does not start: {e.Message}");
        }

        // Nothing disposes of it: the library's own watcher removes what a test process leaves.
        return (container.GetConnectionString(), null);
    }
}
