using Microsoft.AspNetCore.Connections;
using Traceability.Persistence.Embedded;

namespace Traceability.Web.Hosting;

/// <summary>Runs the service to its end and turns what keeps it from starting into one clear line.</summary>
public static class Serving
{
    /// <summary>0 after an ordinary end.</summary>
    public static async Task<int> RunToEndAsync(this WebApplication app)
    {
        var demonstration = app.Services.GetRequiredService<Demonstration>();
        try
        {
            await app.RunAsync();
            return demonstration.Failed ? 1 : 0;
        }
        catch (IOException e) when (e.InnerException is AddressInUseException)
        {
            return await StopAsync(app, $"{e.Message} Stop what uses it, or set TRACEABILITY_URL to another address.");
        }
        catch (EmbeddedPostgresException e)
        {
            return await StopAsync(app, e.Message);
        }
        catch (Npgsql.NpgsqlException e)
        {
            return await StopAsync(app, $"the database named by ConnectionStrings__Traceability cannot be used: {e.Message}");
        }
    }

    private static async Task<int> StopAsync(WebApplication app, string why)
    {
        await Console.Error.WriteLineAsync($"cannot start: {why}");
        await app.DisposeAsync();
        return 1;
    }
}
