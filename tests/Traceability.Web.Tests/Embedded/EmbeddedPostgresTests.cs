using System.Diagnostics;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using Traceability.Persistence.Embedded;

namespace Traceability.Web.Tests.Embedded;

[Trait("Category", "Embedded")]
public sealed class EmbeddedPostgresTests : IDisposable
{
    private readonly DataFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task From_an_empty_folder_it_answers_as_the_owner_in_its_own_database()
    {
        await using var server = await folder.StartAsync();
        Assert.Equal("traceability_owner in traceability", await AskAsync(server, "select current_user || ' in ' || current_database()"));
        Assert.Equal("on", await AskAsync(server, "show data_checksums"));
        Assert.Equal("", await AskAsync(server, "show listen_addresses"));
    }

    [Fact]
    public async Task What_was_written_is_there_after_a_clean_stop_and_a_start()
    {
        await using (var server = await folder.StartAsync())
            await AskAsync(server, "create table kept as select 'film lot 7' as words");
        Assert.False(File.Exists(folder.InCluster("postmaster.pid")));

        await using var again = await folder.StartAsync();
        Assert.Equal("film lot 7", await AskAsync(again, "select words from kept"));
    }

    [Fact]
    public async Task A_second_owner_of_the_folder_is_refused_while_the_first_goes_on()
    {
        await using var first = await folder.StartAsync();
        var refusal = await Assert.ThrowsAsync<EmbeddedPostgresException>(() => folder.StartAsync());
        Assert.Contains($"Another instance already serves the data folder {folder.Path}", refusal.Message);
        Assert.Equal("1", await AskAsync(first, "select '1'"));
    }

    [Fact]
    public async Task A_short_command_joins_the_running_server_and_leaves_it_running()
    {
        await using var owner = await folder.StartAsync();
        await using (var guest = await EmbeddedPostgres.StartAsync(folder.Options with { JoinRunning = true }, NullLogger.Instance))
        {
            Assert.Equal(owner.ProcessId, guest.ProcessId);
            Assert.Equal("1", await AskAsync(guest, "select '1'"));
        }

        Assert.Equal("1", await AskAsync(owner, "select '1'"));
    }

    [Fact]
    public async Task A_killed_server_is_started_again_and_keeps_what_was_committed()
    {
        await using var server = await EmbeddedPostgres.StartAsync(folder.Options with { Durable = true }, NullLogger.Instance);
        await AskAsync(server, "create table kept as select 'committed' as words");
        var killed = server.ProcessId;
        Process.GetProcessById(killed).Kill();

        Assert.Equal("committed", await AskOnceRestartedAsync(server, "select words from kept"));
        Assert.NotEqual(killed, server.ProcessId);
        Assert.Equal(1, server.Restarts);
    }

    [Fact]
    public async Task A_server_left_behind_by_a_killed_owner_is_taken_over_and_stopped_at_the_end()
    {
        var orphan = await folder.LeaveOrphanAsync();
        await using (var server = await folder.StartAsync())
        {
            Assert.True(server.Adopted);
            Assert.Equal(orphan, server.ProcessId);
            Assert.Equal("1", await AskAsync(server, "select '1'"));
        }

        Assert.False(File.Exists(folder.InCluster("postmaster.pid")));
    }

    [Fact]
    public async Task A_server_taken_over_and_then_killed_is_started_again()
    {
        await folder.LeaveOrphanAsync();
        await using var server = await folder.StartAsync();
        Process.GetProcessById(server.ProcessId).Kill();

        Assert.Equal("1", await AskOnceRestartedAsync(server, "select '1'"));
        Assert.False(server.Adopted);
    }

    [Fact]
    public async Task A_pid_file_whose_number_now_belongs_to_another_program_does_not_stop_the_start()
    {
        await using (await folder.StartAsync()) { }
        using var stranger = await folder.StartAsServerUserAsync("/bin/sleep", "60");
        await File.WriteAllTextAsync(folder.InCluster("postmaster.pid"), $"{stranger.Id}\n{folder.InCluster("")}\n1\n5432\n");
        try
        {
            await using var server = await folder.StartAsync();
            Assert.Equal("1", await AskAsync(server, "select '1'"));
        }
        finally
        {
            stranger.Kill();
        }
    }

    private static async Task<string?> AskAsync(EmbeddedPostgres server, string sql)
    {
        await using var connection = new NpgsqlConnection(server.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        return (string?)await command.ExecuteScalarAsync();
    }

    private static async Task<string?> AskOnceRestartedAsync(EmbeddedPostgres server, string sql)
    {
        for (var attempt = 0; ; attempt++)
        {
            // A connection made before outlives the killed server for a moment and would answer too.
            while (server.Restarts == 0)
                await Task.Delay(20);
            try
            {
                return await AskAsync(server, sql);
            }
            catch (NpgsqlException e) when (e.IsTransient && attempt < 300)
            {
                await Task.Delay(100);
            }
        }
    }
}
