using System.CommandLine;

namespace Traceability.Web.Hosting.Commands;

/// <summary>
/// <c>install</c>: writes the systemd unit by which the service starts with the machine, and the file of its settings where there is none
/// yet. Starts nothing: what to type next it says.
/// </summary>
public static class Install
{
    private static readonly Option<string> User = new("--user")
    {
        Description = "Who runs the service; the user must exist.",
        DefaultValueFactory = _ => "traceability",
    };

    private static readonly Option<string> Data = new("--data")
    {
        Description = "The folder of the private database and the logs.",
        DefaultValueFactory = _ => "/var/lib/traceability",
    };

    private static readonly Option<string> Root = new("--root")
    {
        Description = "Write below this folder, to look at the files first.",
        DefaultValueFactory = _ => "/",
    };

    public static Command Command()
    {
        var command = new Command("install", "Start with the machine: write the systemd unit and the file of settings.")
        {
            User,
            Data,
            Root,
        };
        command.SetAction(asked => Run(asked.GetRequiredValue(User), asked.GetRequiredValue(Data), asked.GetRequiredValue(Root)));
        return command;
    }

    /// <summary>0 when both files are there.</summary>
    private static int Run(string user, string data, string root)
    {
        if (
            new[] { user, data }.FirstOrDefault(t => t.Length == 0 || t.Any(c => char.IsWhiteSpace(c) || c is '"' or '\'' or '%')) is
            { } odd
        )
        {
            return StartFailure.Say($"'{odd}' cannot stand in a systemd unit: choose one without blanks, quotes and percent signs");
        }

        var program =
            Environment.ProcessPath is { } path && Path.GetFileName(path) != "dotnet"
                ? path
                : Path.Combine(AppContext.BaseDirectory, "Traceability.Web");
        var unit = Path.Combine(root, "etc/systemd/system/traceability.service");
        var settings = Path.Combine(root, "etc/traceability/traceability.env");
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(unit)!);
            Directory.CreateDirectory(Path.GetDirectoryName(settings)!);
            File.WriteAllText(unit, UnitOf(program, user, data));
            if (!File.Exists(settings))
            {
                File.WriteAllText(settings, Settings);
                if (!OperatingSystem.IsWindows())
                {
                    File.SetUnixFileMode(settings, UnixFileMode.UserRead | UnixFileMode.UserWrite);
                }
            }
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException)
        {
            return StartFailure.Say($"{e.Message} Nothing is started; run it as root, or with --root FOLDER to look at the files.");
        }

        Console.WriteLine($"{unit} and {settings} are there. Next, as root:");
        Console.WriteLine($"  useradd --system --home-dir {data} --shell /usr/sbin/nologin {user}   (when there is no such user)");
        Console.WriteLine("  systemctl daemon-reload && systemctl enable --now traceability");
        Console.WriteLine("  journalctl -u traceability   (in an empty store it says the one-time link for the first account)");
        return 0;
    }

    /// <summary>The state folder is made by systemd for the user; /var/lib only, another folder is the lead's to make.</summary>
    private static string UnitOf(string program, string user, string data) =>
        $"""
            [Unit]
            Description=Production traceability of the workshop
            After=network.target postgresql.service

            [Service]
            User={user}
            {(
                data.StartsWith("/var/lib/", StringComparison.Ordinal)
                    ? $"StateDirectory={data["/var/lib/".Length..]}"
                    : $"ReadWritePaths={data}"
            )}
            Environment=TRACEABILITY_DATA={data}
            EnvironmentFile=-/etc/traceability/traceability.env
            ExecStart={program} serve
            # Its own PostgreSQL writes what is in memory before it ends.
            TimeoutStopSec=90
            KillMode=mixed
            Restart=on-failure
            RestartSec=5
            NoNewPrivileges=true
            ProtectSystem=strict
            ProtectHome=true
            PrivateTmp=true

            [Install]
            WantedBy=multi-user.target

            """;

    private const string Settings = """
        # Settings of the service; a line counts once the # in front of it is gone. After a change: systemctl restart traceability
        # Where it listens. Beyond this machine only behind a server that speaks TLS.
        #TRACEABILITY_URL=http://127.0.0.1:5080
        # The workshop's time zone, as a name such as Europe/Berlin.
        #TRACEABILITY_TIMEZONE=UTC
        # The address under which customers look certificates up.
        #TRACEABILITY_PUBLIC_URL=https://certificates.example
        # A PostgreSQL server of your own instead of the private one.
        #ConnectionStrings__Traceability=Host=127.0.0.1;Username=traceability;Password=...;Database=traceability

        """;
}
