using System.Runtime.Versioning;
using System.Security.Cryptography;
using System.Text;

namespace Traceability.Persistence.Embedded;

/// <summary>The data folder: its paths, its lock and who may reach it.</summary>
internal sealed class ClusterFolder
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode OthersPassThrough = OwnerOnly | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;

    public ClusterFolder(string path)
    {
        Root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        Data = Path.Combine(Root, "pg");
        Socket = SocketFolder(Root);
    }

    public string Root { get; }
    public string Data { get; }
    public string Socket { get; }
    public string Log => Path.Combine(Root, "logs", "postgres.log");

    /// <summary>initdb writes PG_VERSION first and may then be interrupted, so it works here and the finished cluster is moved.</summary>
    public string Unfinished => Path.Combine(Root, "pg.new");

    /// <summary>The major version that wrote the cluster, or null when there is none yet.</summary>
    public int? Major =>
        File.Exists(Path.Combine(Data, "PG_VERSION")) && int.TryParse(File.ReadAllText(Path.Combine(Data, "PG_VERSION")), out var major)
            ? major
            : null;

    /// <summary>
    /// Held as long as the stream is open; the kernel lets go of it even after kill -9. Null when another instance has it.
    /// </summary>
    public FileStream? TryLock()
    {
        try
        {
            return new FileStream(Path.Combine(Root, "service.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException)
        {
            return null;
        }
    }

    [UnsupportedOSPlatform("windows")]
    public async Task MakeReachableAsync(ServerUser user, CancellationToken cancellation)
    {
        if (user.IsOther)
        {
            var nearest = Root;
            while (!Directory.Exists(nearest))
                nearest = Path.GetDirectoryName(nearest)!;
            var reach = await Command.RunAsync(user.Run(["/usr/bin/test", "-x", nearest]), cancellation);
            if (!reach.Ok)
                throw new EmbeddedPostgresException(
                    $"PostgreSQL runs as {user.Name}, who cannot enter {nearest}: choose a folder such as /var/lib/traceability in"
                        + " TRACEABILITY_DATA."
                );
        }

        try
        {
            Directory.CreateDirectory(Root, user.IsOther ? OthersPassThrough : OwnerOnly);
            Directory.CreateDirectory(Path.GetDirectoryName(Log)!);
            // The service's own log may have made it first, open to all.
            File.SetUnixFileMode(Path.GetDirectoryName(Log)!, OwnerOnly);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new EmbeddedPostgresException(
                $"The data folder {Root} cannot be made ({e.Message}): choose another in TRACEABILITY_DATA.",
                e
            );
        }
    }

    /// <summary>Makes a folder that only the server's account can enter.</summary>
    [UnsupportedOSPlatform("windows")]
    public static async Task MakePrivateAsync(string folder, ServerUser user, CancellationToken cancellation)
    {
        try
        {
            Directory.CreateDirectory(folder, OwnerOnly);
            // In /tmp somebody else may have made it first: then this is refused.
            File.SetUnixFileMode(folder, OwnerOnly);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new EmbeddedPostgresException(
                $"The folder {folder} belongs to somebody else: remove it, or choose another data folder in TRACEABILITY_DATA.",
                e
            );
        }

        if (user.IsOther)
            await Command.RunAsync(["/usr/bin/chown", $"{user.Name}:{user.Group}", folder], cancellation);
    }

    /// <summary>Leaves nothing behind in /tmp after a clean stop.</summary>
    public void RemoveSocketOutside()
    {
        if (
            Socket.StartsWith("/tmp/", StringComparison.Ordinal)
            && !Socket.StartsWith(Root, StringComparison.Ordinal)
            && Directory.Exists(Socket)
        )
            Directory.Delete(Socket, recursive: true);
    }

    // The kernel keeps 108 bytes for a socket's path, the last one zero; PostgreSQL adds "/.s.PGSQL.5432".
    private static string SocketFolder(string root)
    {
        var beside = Path.Combine(root, "run");
        if (Encoding.UTF8.GetByteCount(beside) + "/.s.PGSQL.5432".Length <= 107)
            return beside;
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(root)))[..16];
        return $"/tmp/traceability-{hash}";
    }
}
