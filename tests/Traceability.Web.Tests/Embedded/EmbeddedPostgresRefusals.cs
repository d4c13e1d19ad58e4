using Microsoft.Extensions.Logging.Abstractions;
using Traceability.Persistence.Embedded;

namespace Traceability.Web.Tests.Embedded;

[Trait("Category", "Embedded")]
public sealed class EmbeddedPostgresRefusals : IDisposable
{
    private readonly DataFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Data_of_another_major_version_are_refused_with_the_way_out()
    {
        await using (await folder.StartAsync()) { }
        await File.WriteAllTextAsync(folder.InCluster("PG_VERSION"), "9\n");

        var message = await RefusalAsync(folder.Options);
        Assert.Contains("The data were written by PostgreSQL 9, but only", message);
        Assert.Contains("install postgresql-9", message);
    }

    [Fact]
    public async Task A_machine_without_the_programs_is_told_what_to_install()
    {
        var message = await RefusalAsync(folder.Options with { ProgramsFolder = "/nowhere" });
        Assert.Contains("No PostgreSQL server programs (postgres, initdb) are in /nowhere: install them", message);
    }

    [Fact]
    public async Task Foreign_files_in_the_place_of_the_cluster_are_not_touched()
    {
        Directory.CreateDirectory(folder.InCluster(""));
        await File.WriteAllTextAsync(folder.InCluster("letter.txt"), "keep me");

        Assert.Contains("holds files but no PostgreSQL cluster", await RefusalAsync(folder.Options));
        Assert.Equal("keep me", await File.ReadAllTextAsync(folder.InCluster("letter.txt")));
    }

    [Fact]
    public async Task An_interrupted_initdb_is_begun_again()
    {
        Directory.CreateDirectory(Path.Combine(folder.Path, "pg.new"));
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "pg.new", "PG_VERSION"), "15\n");
        await using var server = await folder.StartAsync();
        Assert.False(Directory.Exists(Path.Combine(folder.Path, "pg.new")));
    }

    [Fact]
    public async Task A_folder_that_the_server_cannot_enter_is_refused()
    {
        // Under root the server is another account, and root's home is closed to it; a user cannot write beside the root folder.
        var closed = Environment.IsPrivilegedProcess ? "/root/traceability" : "/proc/traceability";
        var message = await RefusalAsync(folder.Options with { DataFolder = closed });
        Assert.Contains(Environment.IsPrivilegedProcess ? "cannot enter /root" : "cannot be made", message);
        Assert.Contains("TRACEABILITY_DATA", message);
        Assert.False(Directory.Exists(closed));
    }

    [Fact]
    public async Task A_deep_folder_still_gets_a_socket_path_that_the_kernel_takes()
    {
        var deep = Path.Combine(folder.Path, string.Join('/', Enumerable.Repeat("a-rather-long-name", 8)));
        await using var server = await EmbeddedPostgres.StartAsync(folder.Options with { DataFolder = deep }, NullLogger.Instance);
        Assert.StartsWith("Host=/tmp/traceability-", server.ConnectionString);
    }

    private static async Task<string> RefusalAsync(EmbeddedPostgresOptions options)
    {
        var refusal = await Assert.ThrowsAsync<EmbeddedPostgresException>(() => EmbeddedPostgres.StartAsync(options, NullLogger.Instance));
        Assert.DoesNotContain('\n', refusal.Message);
        Assert.Contains("ConnectionStrings__Traceability", refusal.Message);
        Assert.Contains("docker compose up", refusal.Message);
        return refusal.Message;
    }
}
