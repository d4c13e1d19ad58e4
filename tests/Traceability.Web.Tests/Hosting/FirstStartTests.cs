using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Hosting;

[Trait("Category", "Storage")]
public sealed class FirstStartTests
{
    [Fact]
    public async Task Instances_that_start_for_the_first_time_on_one_empty_server_all_start()
    {
        var database = await (await PostgresServer.SharedAsync()).CreateDatabaseAsync();
        var hosts = Enumerable.Range(0, 3).Select(_ => new WorkshopHost(database, TimeProvider.System)).ToList();
        try
        {
            await Task.WhenAll(
                hosts.Select(host =>
                    Task.Run(async () =>
                    {
                        using var client = host.CreateClient();
                        using var ready = await client.GetAsync(new Uri("/health/ready", UriKind.Relative));
                        Assert.True(ready.IsSuccessStatusCode, await ready.Content.ReadAsStringAsync());
                    })
                )
            );
        }
        finally
        {
            foreach (var host in hosts)
            {
                await host.DisposeAsync();
            }
        }
    }
}
