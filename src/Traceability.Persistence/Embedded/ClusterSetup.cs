using System.Runtime.Versioning;
using Microsoft.Extensions.Logging;

namespace Traceability.Persistence.Embedded;

/// <summary>Makes the cluster once and says at every start who may connect to it.</summary>
[UnsupportedOSPlatform("windows")]
internal static class ClusterSetup
{
    internal static async Task PrepareAsync(
        ClusterFolder folder,
        ServerPrograms programs,
        ServerUser user,
        bool durable,
        ILogger log,
        CancellationToken cancellation
    )
    {
        await ClusterFolder.MakePrivateAsync(folder.Socket, user, cancellation);
        if (folder.Major is null)
            await InitialiseAsync(folder, programs, user, durable, log, cancellation);

        // Only local accounts come in as the owner, told apart by the kernel (peer): ours and the server's. Other logins have passwords,
        // which the owner keeps.
        await File.WriteAllTextAsync(
            Path.Combine(folder.Data, "pg_hba.conf"),
            $"local all {EmbeddedPostgres.OwnerRole} peer map=traceability\nlocal all all scram-sha-256\n",
            cancellation
        );
        var accounts = new[] { Environment.UserName, user.Name }.Distinct();
        await File.WriteAllLinesAsync(
            Path.Combine(folder.Data, "pg_ident.conf"),
            accounts.Select(account => $"traceability \"{account}\" {EmbeddedPostgres.OwnerRole}"),
            cancellation
        );
    }

    private static async Task InitialiseAsync(
        ClusterFolder folder,
        ServerPrograms programs,
        ServerUser user,
        bool durable,
        ILogger log,
        CancellationToken cancellation
    )
    {
        if (Directory.Exists(folder.Data) && Directory.EnumerateFileSystemEntries(folder.Data).Any())
            throw new EmbeddedPostgresException(
                $"{folder.Data} holds files but no PostgreSQL cluster (PG_VERSION is missing): restore it or move it away."
            );

        log.LogInformation("Making a PostgreSQL {Major} cluster in {Folder}", programs.Major, folder.Data);
        if (Directory.Exists(folder.Data))
            Directory.Delete(folder.Data);
        if (Directory.Exists(folder.Unfinished))
            Directory.Delete(folder.Unfinished, recursive: true);
        await ClusterFolder.MakePrivateAsync(folder.Unfinished, user, cancellation);

        string[] initdb =
        [
            programs["initdb"],
            "-D",
            folder.Unfinished,
            "-U",
            EmbeddedPostgres.OwnerRole,
            "-E",
            "UTF8",
            "--locale=C.UTF-8",
            "--data-checksums",
            "--auth-local=peer",
            "--auth-host=scram-sha-256",
            .. durable ? Array.Empty<string>() : ["--no-sync"],
        ];
        var made = await Command.RunAsync(user.Run(initdb), cancellation, programs.Libraries);
        if (!made.Ok)
            throw new EmbeddedPostgresException($"PostgreSQL could not make its cluster in {folder.Data} ({made.LastLine}).");
        Directory.Move(folder.Unfinished, folder.Data);
    }
}
