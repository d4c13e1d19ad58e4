namespace Traceability.Persistence.Embedded;

/// <summary>Where the private PostgreSQL keeps its data and how it is run.</summary>
/// <param name="DataFolder">Holds the cluster (<c>pg</c>), its socket (<c>run</c>), its log (<c>logs</c>) and the lock file.</param>
public sealed record EmbeddedPostgresOptions(string DataFolder)
{
    /// <summary>Folder of <c>postgres</c> and <c>initdb</c>; when null they are looked for.</summary>
    public string? ProgramsFolder { get; init; }

    /// <summary>False lets a power cut lose data and start faster: for tests only.</summary>
    public bool Durable { get; init; } = true;

    /// <summary>
    /// When another instance owns the folder, use its running server instead of being refused.
    /// For the short commands (verify, route load) beside a running service.
    /// </summary>
    public bool JoinRunning { get; init; }

    /// <summary>Root cannot run PostgreSQL and its home is closed to others, so its data lie where daemons keep theirs.</summary>
    public static string DefaultDataFolder =>
        Environment.IsPrivilegedProcess
            ? "/var/lib/traceability"
            : Path.Combine(
                Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify),
                "traceability"
            );
}
