namespace Traceability.Web.Http;

/// <summary>
/// A body may come packed with gzip; the limits of its size hold for what is unpacked. Any other packing is refused as such (RFC 9110, 8.4
/// and 15.5.16), instead of being read as if it were the content.
/// </summary>
public static class CompressedBodies
{
    private const string Gzip = "gzip";

    /// <summary>Adds the unpacking, of gzip alone.</summary>
    public static void AddCompressedBodies(this IServiceCollection services)
    {
        // Without it a body that breaks off ends as if it were whole, and half a log would be kept for the whole.
        AppContext.SetSwitch("System.IO.Compression.UseStrictValidation", true);
        services.AddRequestDecompression(o =>
        {
            foreach (var other in o.DecompressionProviders.Keys.Where(k => k != Gzip).ToList())
            {
                o.DecompressionProviders.Remove(other);
            }
        });
    }

    /// <summary>Unpacks, or says why not.</summary>
    public static void UseCompressedBodies(this WebApplication app)
    {
        app.Use(RefuseOthersAsync);
        app.UseRequestDecompression();
    }

    private static async Task RefuseOthersAsync(HttpContext context, RequestDelegate next)
    {
        var encoding = context.Request.Headers.ContentEncoding.ToString().Trim();
        if (
            encoding.Length > 0
            && !encoding.Equals(Gzip, StringComparison.OrdinalIgnoreCase)
            && !encoding.Equals("identity", StringComparison.OrdinalIgnoreCase)
        )
        {
            await ProblemAnswers.Of(ProblemKinds.UnsupportedContent, InputTexts.EncodingIsNotTaken(encoding)).ExecuteAsync(context);
            return;
        }

        try
        {
            await next(context);
        }
        catch (InvalidDataException) when (encoding.Length > 0)
        {
            throw new BadHttpRequestException(InputTexts.IsNotWholeGzip);
        }
    }
}
