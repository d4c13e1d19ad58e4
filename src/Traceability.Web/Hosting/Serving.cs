namespace Traceability.Web.Hosting;

/// <summary>Runs the service to its end and turns what keeps it from starting into one clear line.</summary>
public static class Serving
{
    /// <summary>0 after an ordinary end.</summary>
    public static async Task<int> RunToEndAsync(this WebApplication app)
    {
        try
        {
            var demonstration = app.Services.GetRequiredService<Demonstration>();
            await app.RunAsync();
            return demonstration.Failed ? 1 : 0;
        }
        catch (Exception e) when (StartFailure.InOneLine(e) is { } line)
        {
            var code = StartFailure.Say(line);
            await app.DisposeAsync();
            return code;
        }
    }

    /// <summary>False when a setting keeps the service from starting; it has then been said.</summary>
    public static bool MayStart(this WebApplicationBuilder builder)
    {
        try
        {
            StartSettings.Check(builder.Configuration);
            return true;
        }
        catch (StartSettingException e)
        {
            StartFailure.Say(e.Message);
            return false;
        }
    }
}
