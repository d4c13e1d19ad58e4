using Npgsql;

namespace Traceability.Web.Tests.Server;

[Trait("Category", "Storage")]
public sealed class PostgresServerTests
{
    [Fact]
    public async Task The_server_that_was_insisted_on_is_the_one_in_use()
    {
        var server = await PostgresServer.SharedAsync();
        var wanted = Environment.GetEnvironmentVariable("TRACEABILITY_TEST_SERVER") ?? server.Origin;
        Assert.Equal(wanted, server.Origin);
        await using var source = NpgsqlDataSource.Create(await server.CreateDatabaseAsync());
        await using var ask = source.CreateCommand("show listen_addresses");
        // The private one is closed to the network; the two others are reached over it.
        Assert.Equal(server.Origin == "private", (string?)await ask.ExecuteScalarAsync() == "");
    }

    [Fact]
    public async Task Two_databases_from_one_template_hold_what_it_holds_and_do_not_see_each_other()
    {
        var server = await PostgresServer.SharedAsync();
        var prepared = 0;
        async Task<NpgsqlDataSource> Fresh() =>
            NpgsqlDataSource.Create(
                await server.CreateDatabaseAsync(
                    "one-lot",
                    async connectionString =>
                    {
                        prepared++;
                        await using var template = NpgsqlDataSource.Create(connectionString);
                        await using var fill = template.CreateCommand("create table lots (number text); insert into lots values ('FL-1')");
                        await fill.ExecuteNonQueryAsync();
                    }
                )
            );

        var both = await Task.WhenAll(Fresh(), Fresh());
        await using var first = both[0];
        await using var second = both[1];
        await using (var add = first.CreateCommand("insert into lots values ('FL-2')"))
            await add.ExecuteNonQueryAsync();
        await using var count = second.CreateCommand("select count(*) from lots");

        Assert.Equal(1, prepared);
        Assert.Equal(1L, await count.ExecuteScalarAsync());
    }
}
