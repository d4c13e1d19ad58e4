namespace Traceability.Persistence.Embedded;

/// <summary>The account the server runs as. PostgreSQL refuses to run as root, so root hands over to another one.</summary>
internal sealed record ServerUser(string Name, string? Group)
{
    private static readonly string[] Folders = ["/usr/bin/", "/bin/"];

    /// <summary>Set only when we are root and the server is somebody else.</summary>
    public bool IsOther => Group is not null;

    /// <summary>The command, run as this account.</summary>
    public IEnumerable<string> Run(IEnumerable<string> command, params string[] extra) =>
        IsOther || extra.Length > 0
            ?
            [
                Tool("setpriv"),
                .. IsOther ? [$"--reuid={Name}", $"--regid={Group}", "--clear-groups"] : Array.Empty<string>(),
                .. extra,
                .. command,
            ]
            : command;

    /// <summary>Who owns an existing cluster goes on owning it; a new one belongs to <c>postgres</c>, or else to <c>nobody</c>.</summary>
    public static async Task<ServerUser> ChooseAsync(string? existingCluster, CancellationToken cancellation)
    {
        var owner = existingCluster is null
            ? null
            : (await Command.RunAsync(["/usr/bin/stat", "-c", "%U", existingCluster], cancellation)).Output.Trim();
        if (!Environment.IsPrivilegedProcess)
        {
            return owner is null || owner == Environment.UserName
                ? new ServerUser(Environment.UserName, null)
                : throw new EmbeddedPostgresException(
                    $"{existingCluster} belongs to {owner}, not to {Environment.UserName}: start as {owner}, or choose another folder"
                        + " in TRACEABILITY_DATA."
                );
        }

        foreach (var name in (string[])(owner is null ? ["postgres", "nobody"] : [owner]))
        {
            var group = await Command.RunAsync(["/usr/bin/id", "-g", name], cancellation);
            if (group.Ok && name != "root")
                return new ServerUser(name, group.Output.Trim());
        }

        throw new EmbeddedPostgresException(
            owner is null
                ? "PostgreSQL does not run as root and this machine has no account 'postgres' or 'nobody' to run it as."
                : $"{existingCluster} belongs to {owner}, and PostgreSQL cannot run as that account."
        );
    }

    internal static string Tool(string name) =>
        Folders.Select(folder => folder + name).FirstOrDefault(File.Exists)
        ?? throw new EmbeddedPostgresException($"The program '{name}' (package util-linux) is missing here.");
}
