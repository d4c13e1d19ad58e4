using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Web.Features.Access;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Pages;

public sealed class FirstAccountPageTests
{
    [Fact]
    public async Task The_link_that_was_printed_makes_one_account_and_no_second()
    {
        await using var host = new WorkshopHost(await (await PostgresServer.SharedAsync()).CreateDatabaseAsync(), TimeProvider.System);
        var visitor = new Visitor(host.CreateClient());
        await using var scope = host.Services.CreateAsyncScope();
        var key = await scope.ServiceProvider.GetRequiredService<FirstAccountKey>().MakeAsync(default);

        Assert.Contains("Open the one-time link", (await visitor.GoAsync("/sign-in")).Text, StringComparison.Ordinal);
        Assert.Contains("Open the one-time link", (await visitor.GoAsync("/station")).Text, StringComparison.Ordinal);
        await visitor.GoAsync("/first-account?key=" + key);
        var wrong = await visitor.SendAsync(
            "/first-account",
            ("Key", "guessed"),
            ("Badge", "LEAD7"),
            ("Name", "Lea Lead"),
            ("Pin", "77665544")
        );
        Assert.Equal(HttpStatusCode.Forbidden, wrong.Status);
        Assert.DoesNotContain("77665544", wrong.Html, StringComparison.Ordinal);

        var made = await visitor.SendAsync("/first-account", ("Key", key), ("Badge", "LEAD7"), ("Name", "Lea Lead"), ("Pin", "77665544"));
        Assert.Equal("/sign-in", made.Path);
        Assert.Contains("The account is made", made.Text, StringComparison.Ordinal);
        await visitor.SendAsync("/sign-in", ("Badge", "LEAD7"), ("Pin", "77665544"));
        Assert.Contains("Lea Lead", visitor.Now.Html, StringComparison.Ordinal);
        Assert.Contains("say them before the first is issued", visitor.Now.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Open the one-time link", (await visitor.GoAsync("/sign-in")).Text, StringComparison.Ordinal);
        Assert.Contains("No station is known here yet", (await visitor.GoAsync("/station")).Text, StringComparison.Ordinal);

        Assert.Contains("made already", (await visitor.GoAsync("/first-account?key=" + key)).Text, StringComparison.Ordinal);
    }
}
