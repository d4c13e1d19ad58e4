using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Serilog.Events;
using Serilog.Parsing;
using Traceability.Web.Hosting;

namespace Traceability.Web.Tests.Hosting;

/// <summary>What the service says while its database still starts, and what its log leaves out.</summary>
public sealed class EarlyStartTests
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
        await EarlyStart.HoldBackAsync(context, _ => Task.CompletedTask);
        Assert.Equal(status, context.Response.StatusCode);
        Assert.Equal(status == 503 ? "1" : "", context.Response.Headers.RetryAfter.ToString());
    }

    [Theory]
    [InlineData(Keys, 35, true)]
    [InlineData(Keys, 36, false)]
    [InlineData("Microsoft.AspNetCore.DataProtection.KeyManagement.DefaultKeyResolver", 35, false)]
    public void Of_the_keys_that_lie_open_the_log_leaves_out_one_line(string source, int number, bool leftOut)
    {
        var id = new LogEventProperty("EventId", new StructureValue([new("Id", new ScalarValue(number))]));
        var line = new LogEvent(DateTimeOffset.UnixEpoch, LogEventLevel.Warning, null, new MessageTemplateParser().Parse("x"), [new("SourceContext", new ScalarValue(source)), id]);
        Assert.Equal(leftOut, KeysLieOpen.IsTold(line));
    }
}
