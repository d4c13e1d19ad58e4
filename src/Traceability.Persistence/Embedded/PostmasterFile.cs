namespace Traceability.Persistence.Embedded;

/// <summary>What postmaster.pid says: written by the server, removed when it stops cleanly, left behind when it is killed.</summary>
internal readonly record struct PostmasterFile(int ProcessId, string Status)
{
    private const int StatusLine = 7;

    public bool IsReady => Status == "ready";

    public static string PathIn(string data) => Path.Combine(data, "postmaster.pid");

    public static PostmasterFile? Read(string data)
    {
        try
        {
            var lines = File.ReadAllLines(PathIn(data));
            return lines.Length > 0 && int.TryParse(lines[0], out var pid)
                ? new PostmasterFile(pid, lines.Length > StatusLine ? lines[StatusLine].Trim() : "")
                : null;
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>The process lives and was started on this cluster; after a reboot the number may belong to anything.</summary>
    public bool IsAliveOn(string data) => CommandLine(ProcessId).Contains(data);

    /// <summary>
    /// Some process, alive or dead and not yet collected by its parent, has this number: PostgreSQL believes it to be the server.
    /// </summary>
    public static bool IsTaken(int pid) => Directory.Exists($"/proc/{pid}");

    /// <summary>A dead process keeps its number, but no command line, until its parent collects it.</summary>
    public static bool IsAlive(int pid) => CommandLine(pid).Length > 0;

    private static string[] CommandLine(int pid)
    {
        try
        {
            return File.ReadAllText($"/proc/{pid}/cmdline").Split('\0', StringSplitOptions.RemoveEmptyEntries);
        }
        catch (IOException)
        {
            return [];
        }
    }
}
