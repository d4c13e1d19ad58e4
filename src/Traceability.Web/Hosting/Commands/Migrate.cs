namespace Traceability.Web.Hosting.Commands;

/// <summary>Brings the tables up to date and ends.</summary>
public static class Migrate
{
    /// <summary>0 when the tables are up to date.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        await using var database = new WorkshopDatabase(
            new ConfigurationBuilder().AddEnvironmentVariables().Build(), LoggerFactory.Create(l => l.AddSimpleConsole()).CreateLogger<WorkshopDatabase>());
        await database.StartingAsync(CancellationToken.None);
        Console.WriteLine("the tables are up to date");
        return 0;
    }
}
