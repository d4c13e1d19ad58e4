using System.Runtime.Versioning;

namespace Traceability.Web.Tests.Hosting;

/// <summary>What <c>install</c> writes, so that the service starts with the machine.</summary>
[SupportedOSPlatform("linux")]
public sealed class InstallTests : IDisposable
{
    private readonly string root = Path.Combine(Path.GetTempPath(), $"traceability-install-{Guid.NewGuid():N}");

    private string[] InRoot => ["install", "--root", root];

    private string Unit => Path.Combine(root, "etc/systemd/system/traceability.service");

    private string Settings => Path.Combine(root, "etc/traceability/traceability.env");

    public void Dispose()
    {
        if (Directory.Exists(root))
        {
            Directory.Delete(root, true);
        }
    }

    [Fact]
    public async Task The_unit_starts_this_program_with_the_user_and_the_folder_that_were_named()
    {
        using var run = await ProgramRun.ToEndAsync([], [.. InRoot, "--user", "bench", "--data", "/var/lib/records"]);
        Assert.Equal((0, ""), (run.Code, run.Errors));
        var unit = await File.ReadAllTextAsync(Unit);
        Assert.Contains("User=bench\n", unit, StringComparison.Ordinal);
        Assert.Contains("StateDirectory=records\nEnvironment=TRACEABILITY_DATA=/var/lib/records\n", unit, StringComparison.Ordinal);
        Assert.Contains($"ExecStart={Path.Combine(AppContext.BaseDirectory, "Traceability.Web")} serve\n", unit, StringComparison.Ordinal);
        Assert.Contains("systemctl daemon-reload && systemctl enable --now traceability", run.Output, StringComparison.Ordinal);
        Assert.False(Directory.Exists(run.Data));
    }

    [Fact]
    public async Task Settings_that_are_there_already_are_kept_and_read_by_their_owner_only()
    {
        (await ProgramRun.ToEndAsync([], InRoot)).Dispose();
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Settings));
        await File.WriteAllTextAsync(Settings, "TRACEABILITY_TIMEZONE=Europe/Berlin\n");
        using var again = await ProgramRun.ToEndAsync([], InRoot);
        Assert.Equal((0, "TRACEABILITY_TIMEZONE=Europe/Berlin\n"), (again.Code, await File.ReadAllTextAsync(Settings)));
    }

    [Theory]
    [InlineData("--user", "two words")]
    [InlineData("--data", "/var/lib/%h")]
    [InlineData("--root", "/dev/null/nowhere")]
    public async Task What_cannot_be_written_is_said_in_one_line(string option, string value)
    {
        using var run = await ProgramRun.ToEndAsync([], [.. option == "--root" ? InRoot[..1] : InRoot, option, value]);
        Assert.Equal(1, run.Code);
        Assert.Single(run.Errors.Trim().Split('\n'));
        Assert.False(File.Exists(Unit));
    }
}
