using System.Net;
using System.Net.Sockets;

namespace Traceability.Web.Tests.Hosting;

/// <summary>
/// What is said on the command line and is not understood starts nothing, and what keeps the service from starting is one line.
/// </summary>
public sealed class CommandLineTests
{
    [Theory]
    [InlineData("serve", "--help")]
    [InlineData("migrate", "migrate", "--help")]
    [InlineData("FILE", "route", "load", "-h")]
    [InlineData("SERIAL", "certificate", "--help")]
    [InlineData("--serial", "verify", "-h")]
    [InlineData("--check", "rebuild", "--help")]
    [InlineData("--demo", "serve", "-h")]
    [InlineData("rebuild", "help")]
    [InlineData(".", "--version")]
    public async Task Help_and_version_say_something_and_start_nothing(string says, params string[] arguments)
    {
        using var run = await ProgramRun.ToEndAsync([], arguments);
        Assert.Equal((0, ""), (run.Code, run.Errors));
        Assert.Contains(says, run.Output, StringComparison.Ordinal);
        Assert.False(Directory.Exists(run.Data));
    }

    [Theory]
    [InlineData("--unknown")]
    [InlineData("sreve")]
    [InlineData("serve", "--demmo")]
    [InlineData("demo", "now")]
    [InlineData("certificate")]
    [InlineData("verify", "--serail", "U-1")]
    [InlineData("route", "load")]
    public async Task What_is_not_understood_is_an_error_and_starts_nothing(params string[] arguments)
    {
        using var run = await ProgramRun.ToEndAsync([], arguments);
        Assert.Equal(2, run.Code);
        Assert.NotEqual("", run.Errors);
        Assert.DoesNotContain("   at ", run.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(run.Data));
    }

    [Theory]
    [InlineData("TRACEABILITY_TIMEZONE", "Mars/Olympus_Mons", "'Mars/Olympus_Mons', which this machine does not know")]
    [InlineData("TRACEABILITY_LANGUAGE", "tlh", "TRACEABILITY_LANGUAGE is 'tlh'")]
    [InlineData("TRACEABILITY_URL", "workshop", "TRACEABILITY_URL is 'workshop'")]
    [InlineData("TRACEABILITY_DATA", "/dev/null/data", "the data folder /dev/null/data cannot be written to")]
    [InlineData("ConnectionStrings__Traceability", "nonsense", "ConnectionStrings__Traceability cannot be read")]
    [InlineData(
        "ConnectionStrings__Traceability",
        "Host=127.0.0.1;Port=1;Database=x;Username=y;Password=z",
        "ConnectionStrings__Traceability cannot be used"
    )]
    public async Task A_setting_that_nothing_can_be_started_with_is_named_in_one_line(string setting, string value, string said)
    {
        foreach (
            var arguments in (string[][])
                [
                    ["serve"],
                    ["migrate"],
                ]
        )
        {
            using var run = await ProgramRun.ToEndAsync(new() { [setting] = value }, arguments);
            Assert.Equal(1, run.Code);
            var line = Assert.Single(
                run.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries),
                l => l.StartsWith("cannot start: ", StringComparison.Ordinal)
            );
            Assert.Contains(said, line, StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", run.Errors + run.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_port_that_is_taken_is_said_in_one_line()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        using var run = await ProgramRun.ToEndAsync(
            new() { ["TRACEABILITY_URL"] = $"http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}" },
            "serve"
        );
        Assert.Equal(1, run.Code);
        Assert.Contains(
            "address already in use",
            Assert.Single(run.Errors.Split('\n'), l => l.StartsWith("cannot start: ", StringComparison.Ordinal)),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("   at ", run.Errors, StringComparison.Ordinal);
    }
}
