using System.CommandLine;
using System.Text.RegularExpressions;

namespace Traceability.Web.Hosting.Commands;

/// <summary>
/// What the program was asked for on its command line: to serve, which it does when nothing is said, or a short command. Whatever it does
/// not understand is an error and starts nothing.
/// </summary>
public sealed partial class CommandLine
{
    private static readonly Option<bool> WithDemonstration = new("--demo")
    {
        Description = "Load the invented demonstration workshop first, when the store is empty.",
    };

    private readonly ParseResult asked;
    private readonly Command serve = new("serve", "Serve until Ctrl-C. This is what happens when no command is named.")
    {
        WithDemonstration,
    };
    private readonly Command demo = new("demo", "Load the invented demonstration workshop into an empty store and end.");
    private readonly RootCommand root = new(
        "Production traceability for workshops of handbuilt condenser microphones. Without a command it serves. Settings come from the"
            + " environment: "
            + "TRACEABILITY_URL (where it listens), TRACEABILITY_DATA (folder of its private database and logs),"
            + " ConnectionStrings__Traceability (a PostgreSQL server "
            + "instead of the private one), TRACEABILITY_WORKSHOP, TRACEABILITY_PUBLIC_URL, TRACEABILITY_TIMEZONE; DEVELOPERS.md names"
            + " them all."
    )
    {
        WithDemonstration,
    };

    private readonly string[] settings;

    /// <summary>Reads the command line; nothing is done yet.</summary>
    public CommandLine(string[] args)
    {
        settings = [.. args.Where(a => Setting().IsMatch(a))];
        var help = new Command("help", "Say what can be asked for.");
        foreach (
            var command in (Command[])
                [
                    serve,
                    demo,
                    Migrate.Command(),
                    RouteFiles.Command(),
                    CertificateFile.Command(),
                    Verify.Command(),
                    Rebuild.Command(),
                    RecoverLead.Command(),
                    Install.Command(),
                    help,
                ]
        )
        {
            root.Subcommands.Add(command);
        }

        foreach (var command in (Command[])[root, serve, demo])
        {
            command.SetAction(_ => { });
        }

        help.SetAction(_ => root.Parse("--help").Invoke());
        asked = root.Parse([.. args.Except(settings)]);
    }

    /// <summary>True when the service itself is to be started, by <c>serve</c>, <c>demo</c> or nothing.</summary>
    public bool Serves =>
        asked.Errors.Count == 0 && (asked.Action == root.Action || asked.Action == serve.Action || asked.Action == demo.Action);

    /// <summary>Whether the demonstration is to be loaded: <c>serve --demo</c>, or <c>demo</c>, which ends afterwards.</summary>
    public DemonstrationWish Demonstration =>
        asked.Action == demo.Action ? new(true, true, new Demo()) : new(asked.GetValue(WithDemonstration), false, null);

    /// <summary>Options of the web host: its files lie beside the program, wherever it is started from.</summary>
    public WebApplicationOptions HostOptions => new() { Args = settings, ContentRootPath = AppContext.BaseDirectory };

    /// <summary>
    /// Does what was asked for other than serving: a short command, help, or saying what was not understood. 0 on success, 2 when it was
    /// not understood.
    /// </summary>
    public async Task<int> RunAsync()
    {
        try
        {
            var code = await asked.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
            return asked.Errors.Count > 0 ? 2 : code;
        }
        catch (Exception e) when (StartFailure.InOneLine(e) is { } line)
        {
            return StartFailure.Say(line);
        }
    }

    /// <summary>
    /// A setting of the service or of its host in the place of one from the environment: so the host of the tests passes its own on.
    /// </summary>
    [GeneratedRegex("^--(TRACEABILITY_[A-Z_]+|ConnectionStrings(:[A-Za-z]+)?|environment|contentRoot|applicationName)=")]
    private static partial Regex Setting();
}
