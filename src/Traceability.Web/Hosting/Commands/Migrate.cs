using System.CommandLine;

namespace Traceability.Web.Hosting.Commands;

/// <summary><c>migrate</c>: brings the tables up to date and ends.</summary>
public static class Migrate
{
    public static Command Command()
    {
        var command = new Command("migrate", "Bring the tables up to date and end.");
        command.SetAction(_ => RunAsync());
        return command;
    }

    /// <summary>0 when the tables are up to date.</summary>
    private static async Task<int> RunAsync()
    {
        await using var database = await CommandDatabase.OpenAsync();
        Console.WriteLine("the tables are up to date");
        return 0;
    }
}
