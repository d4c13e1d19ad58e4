using System.Text.RegularExpressions;

namespace Traceability.Persistence.Embedded;

/// <summary>The folder that holds <c>postgres</c>, <c>initdb</c> and <c>pg_dump</c>, and their major version.</summary>
public sealed partial record ServerPrograms(string Folder, int Major)
{
    public string this[string program] => Path.Combine(Folder, program);

    /// <summary>
    /// Packages unpacked without root bring their shared libraries along: ROOT/usr/lib/postgresql/15/bin with ROOT/usr/lib/*-linux-gnu.
    /// </summary>
    internal string? Libraries
    {
        get
        {
            var lib = Path.GetFullPath(Path.Combine(Folder, "../../.."));
            if (lib is "/" or "/usr" or "/usr/lib" || Path.GetFileName(lib) != "lib" || !Directory.Exists(lib))
                return null;
            var folders = Directory.GetDirectories(lib, "*-linux-gnu*");
            return folders.Length == 0 ? null : string.Join(':', folders);
        }
    }

    /// <summary>
    /// Looks in the configured folder only, or when that is null in PATH and where packages put the programs, newest first;
    /// <paramref name="neededMajor"/> is the version that made an existing cluster.
    /// </summary>
    /// <exception cref="EmbeddedPostgresException">None there, or none of the version that the data need.</exception>
    public static async Task<ServerPrograms> FindAsync(string? configured, int? neededMajor, CancellationToken cancellation = default)
    {
        var seen = new List<ServerPrograms>();
        foreach (var folder in (configured is null ? Places() : [configured]).Distinct())
        {
            if (!File.Exists(Path.Combine(folder, "postgres")) || !File.Exists(Path.Combine(folder, "initdb")))
                continue;
            if (await ReadAsync(folder, cancellation) is not { } programs)
                continue;
            if (neededMajor is null || programs.Major == neededMajor)
                return programs;
            seen.Add(programs);
        }

        throw new EmbeddedPostgresException(
            seen.Count == 0
                ? $"No PostgreSQL server programs (postgres, initdb) {(configured is null ? "were found" : $"are in {configured}")}:"
                    + " install them (Debian, Ubuntu: apt-get install postgresql)."
                : $"The data were written by PostgreSQL {neededMajor}, but only"
                    + $" {string.Join(", ", seen.Select(p => $"{p.Major} ({p.Folder})"))} is here: install postgresql-{neededMajor}, or"
                    + " with it make a backup and restore that into a new data folder."
        );
    }

    private static async Task<ServerPrograms?> ReadAsync(string folder, CancellationToken cancellation)
    {
        // PATH often holds only links; the companions such as pg_dump lie where they point to.
        var real = File.ResolveLinkTarget(Path.Combine(folder, "postgres"), returnFinalTarget: true)?.FullName;
        if (real is not null && File.Exists(Path.Combine(Path.GetDirectoryName(real)!, "initdb")))
            folder = Path.GetDirectoryName(real)!;

        var programs = new ServerPrograms(folder, 0);
        var answer = await Command.RunAsync([programs["postgres"], "--version"], cancellation, programs.Libraries);
        var version = VersionInAnswer().Match(answer.Output);
        return answer.Ok && version.Success ? programs with { Major = int.Parse(version.ValueSpan, provider: null) } : null;
    }

    private static IEnumerable<string> Places()
    {
        foreach (var folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':'))
            if (Path.IsPathRooted(folder))
                yield return folder;
        foreach (var version in Newest("/usr/lib/postgresql", "*"))
            yield return Path.Combine(version, "bin");
        foreach (var version in Newest("/usr", "pgsql-*"))
            yield return Path.Combine(version, "bin");
        yield return "/usr/local/pgsql/bin";
    }

    private static IEnumerable<string> Newest(string parent, string pattern) =>
        Directory.Exists(parent)
            ? Directory
                .GetDirectories(parent, pattern)
                .OrderByDescending(folder => int.TryParse(Path.GetFileName(folder).Split('-')[^1], out var major) ? major : 0)
            : [];

    [GeneratedRegex(@"(?<=PostgreSQL\) )\d+")]
    private static partial Regex VersionInAnswer();
}
