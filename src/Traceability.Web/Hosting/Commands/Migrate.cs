namespace Traceability.Web.Hosting.Commands;

/// <summary><c>migrate</c>: brings the tables up to date and ends.</summary>
public static class Migrate
{
    /// <summary>0 when the tables are up to date.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        await using var database = await CommandDatabase.OpenAsync();
        Console.WriteLine("the tables are up to date");
        return 0;
    }
}
