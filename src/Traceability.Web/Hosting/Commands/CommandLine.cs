namespace Traceability.Web.Hosting.Commands;

/// <summary>The commands of the program: <c>serve</c> is what it does when nothing else is said.</summary>
public static class CommandLine
{
    private static readonly Dictionary<string, Func<string[], Task<int>>> Commands = new()
    {
        ["migrate"] = Migrate.RunAsync,
        ["route"] = RouteFiles.RunAsync,
        ["certificate"] = CertificateFile.RunAsync,
        ["verify"] = Verify.RunAsync,
        ["rebuild"] = Rebuild.RunAsync,
        ["help"] = _ => Task.FromResult(Help()),
    };

    /// <summary>The command named by the arguments, or null for <c>serve</c>.</summary>
    public static Func<string[], Task<int>>? Find(string[] args) => args switch
    {
        [] or ["serve", ..] or ["demo"] => null,
        [var first, ..] when first.StartsWith("--", StringComparison.Ordinal) => null,
        [var name, ..] => Commands.GetValueOrDefault(name, _ => Task.FromResult(Unknown(name))),
    };

    /// <summary>Whether the demonstration is to be loaded: <c>serve --demo</c>, or <c>demo</c>, which ends afterwards.</summary>
    public static DemonstrationWish Demonstration(string[] args) => args switch
    {
        ["demo"] => new(true, true, new Demo()),
        _ => new(args.Contains("--demo"), false, null),
    };

    /// <summary>Options of the web host: its files lie beside the program, wherever it is started from.</summary>
    public static WebApplicationOptions HostOptions(string[] args) => new() { Args = [.. args.Where(a => a.Contains('=', StringComparison.Ordinal))], ContentRootPath = AppContext.BaseDirectory };

    private static int Help()
    {
        Console.WriteLine("usage: Traceability.Web [serve [--demo] | demo | " + string.Join(" | ", Commands.Keys) + "]");
        return 0;
    }

    private static int Unknown(string name)
    {
        Console.Error.WriteLine($"there is no command '{name}'; known: serve, demo, {string.Join(", ", Commands.Keys)}");
        return 2;
    }
}
