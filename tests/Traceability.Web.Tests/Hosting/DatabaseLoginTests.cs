using Npgsql;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Hosting;

[Trait("Category", "Storage")]
public sealed class DatabaseLoginTests
{
    [Fact]
    public async Task With_logins_given_for_migrations_and_for_the_service_each_does_only_its_own()
    {
        var owner = await (await PostgresServer.SharedAsync()).CreateDatabaseAsync();
        var (name, password) = ($"given_{Guid.NewGuid():N}", "a password of the tests");
        await RunAsync(owner, $"create role {name} login password '{password}'");
        var given = new NpgsqlConnectionStringBuilder(owner) { Username = name, Password = password }.ConnectionString;

        await using (
            var host = new WorkshopHost(
                given,
                TimeProvider.System,
                settings: new() { ["ConnectionStrings:TraceabilityMigrations"] = owner }
            )
        )
        {
            using var client = host.CreateClient();
            (await client.GetAsync(new Uri("/health/ready", UriKind.Relative))).EnsureSuccessStatusCode();
        }

        Assert.Equal(
            PostgresErrorCodes.InsufficientPrivilege,
            (await Assert.ThrowsAsync<PostgresException>(() => RunAsync(given, "reset role; create table anything (x int)"))).SqlState
        );
        Assert.Equal(
            PostgresErrorCodes.InsufficientPrivilege,
            (await Assert.ThrowsAsync<PostgresException>(() => RunAsync(given, "update people set name = name"))).SqlState
        );
    }

    private static async Task RunAsync(string connectionString, string sql)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync();
    }
}
