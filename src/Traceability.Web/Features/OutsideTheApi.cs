using Traceability.Web.Features.Public.Fonts;
using Traceability.Web.Features.Public.Verify;
using Traceability.Web.Http;

namespace Traceability.Web.Features;

/// <summary>What stands outside the interface for programs: its description, the typeface, the address that certificates print.</summary>
public static class OutsideTheApi
{
    public static void AddOutsideTheApi(this IServiceCollection services)
    {
        services.AddSingleton<MatcherPolicy, JsonOnly>();
    }

    public static void MapOutsideTheApi(this WebApplication app)
    {
        app.MapOpenApi();
        app.MapGet("/fonts/{face}.ttf", FontFiles.Face).ExcludeFromDescription();
        app.MapGet("/fonts/licence.txt", FontFiles.Licence).ExcludeFromDescription();
        VerifyCertificate.MapPrinted(app);
    }
}
