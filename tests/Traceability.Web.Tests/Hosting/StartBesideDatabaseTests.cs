using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Serilog.Events;
using Serilog.Parsing;
using Traceability.Web.Hosting;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Hosting;

/// <summary>What the service says while its database still starts, and what its log leaves out.</summary>
public sealed class StartBesideDatabaseTests
{
    private const string Keys = "Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager";

    [Theory]
    [InlineData("/health/live", 200)]
    [InlineData("/health/ready", 200)]
    [InlineData("/api/v1/parts", 503)]
    [InlineData("/sign-in", 503)]
    public async Task Before_the_database_is_ready_only_health_is_told(string path, int status)
    {
        await using var database = new WorkshopDatabase(new ConfigurationBuilder().Build(), NullLogger<WorkshopDatabase>.Instance);
        var services = new ServiceCollection().AddLogging().AddSingleton(database).BuildServiceProvider();
        var context = new DefaultHttpContext { RequestServices = services };
        context.Request.Path = path;
        context.Response.Body = new MemoryStream();
        await StartBesideDatabase.RefuseUntilReadyAsync(context, _ => Task.CompletedTask);
        Assert.Equal(status, context.Response.StatusCode);
        Assert.Equal(status == 503 ? "1" : "", context.Response.Headers.RetryAfter.ToString());
        var told = System.Text.Encoding.UTF8.GetString(((MemoryStream)context.Response.Body).ToArray());
        Assert.Equal(status == 503, told.Contains("\"type\":\"/problems/starting\"", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Who_comes_while_the_demonstration_lays_its_foundation_waits_and_is_then_answered()
    {
        var foundation = new Foundation(new(Asked: true, EndAfterwards: false, null));
        await using var workshop = await MigratedAsync(foundation);
        bool? laidWhenAnswered = null;
        var waiting = StartBesideDatabase.RefuseUntilReadyAsync(
            Request(workshop, "/api/v1/parts"),
            _ =>
            {
                laidWhenAnswered = foundation.Laid.IsCompleted;
                return Task.CompletedTask;
            }
        );
        Assert.False(waiting.IsCompleted);
        foundation.Lay();
        await waiting;
        Assert.True(laidWhenAnswered);
    }

    [Fact]
    public async Task The_demonstration_itself_and_those_who_ask_for_health_do_not_wait()
    {
        var foundation = new Foundation(new(Asked: true, EndAfterwards: false, null));
        await using var workshop = await MigratedAsync(foundation);
        using var http = new HttpClient();
        foundation.Let(http);
        var own = Request(workshop, "/api/v1/people");
        foreach (var (name, values) in http.DefaultRequestHeaders)
        {
            own.Request.Headers[name] = values.ToArray();
        }

        foreach (var context in new[] { own, Request(workshop, "/health/ready") })
        {
            var answered = false;
            await StartBesideDatabase.RefuseUntilReadyAsync(
                context,
                _ =>
                {
                    answered = true;
                    return Task.CompletedTask;
                }
            );
            Assert.True(answered);
        }

        own.Request.Headers[http.DefaultRequestHeaders.Single().Key] = "guessed";
        Assert.False(StartBesideDatabase.RefuseUntilReadyAsync(own, _ => Task.CompletedTask).IsCompleted);
        foundation.Lay();
    }

    [Fact]
    public void Without_a_demonstration_nobody_waits() =>
        Assert.True(new Foundation(new(Asked: false, EndAfterwards: false, null)).Laid.IsCompleted);

    private static DefaultHttpContext Request(ServiceProvider services, string path)
    {
        var context = new DefaultHttpContext { RequestServices = services };
        context.Request.Path = path;
        return context;
    }

    private static async Task<ServiceProvider> MigratedAsync(Foundation foundation)
    {
        var connection = await (await PostgresServer.SharedAsync()).CreateDatabaseAsync();
        var configuration = new ConfigurationBuilder().AddInMemoryCollection([new("ConnectionStrings:Traceability", connection)]).Build();
        var database = new WorkshopDatabase(configuration, NullLogger<WorkshopDatabase>.Instance);
        await database.PrepareAsync(CancellationToken.None);
        return new ServiceCollection().AddLogging().AddSingleton(foundation).AddSingleton(database).BuildServiceProvider();
    }

    [Theory]
    [InlineData(Keys, 35, true)]
    [InlineData(Keys, 36, false)]
    [InlineData("Microsoft.AspNetCore.DataProtection.KeyManagement.DefaultKeyResolver", 35, false)]
    public void Of_the_keys_that_lie_open_the_log_leaves_out_one_line(string source, int number, bool leftOut)
    {
        var id = new LogEventProperty("EventId", new StructureValue([new("Id", new ScalarValue(number))]));
        var line = new LogEvent(
            DateTimeOffset.UnixEpoch,
            LogEventLevel.Warning,
            null,
            new MessageTemplateParser().Parse("x"),
            [new("SourceContext", new ScalarValue(source)), id]
        );
        Assert.Equal(leftOut, UnencryptedKeysWarning.IsTold(line));
    }
}
