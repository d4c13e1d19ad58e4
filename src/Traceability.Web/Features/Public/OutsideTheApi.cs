using Microsoft.AspNetCore.OpenApi;
using Traceability.Web.Features.Public.Fonts;
using Traceability.Web.Features.Public.Verify;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Public;

/// <summary>What stands outside the interface for programs: its description, the typeface, the address that certificates print.</summary>
public static class OutsideTheApi
{
    public static void AddOutsideTheApi(this IServiceCollection services)
    {
        services.Configure<OpenApiOptions>("v1", ApiNames.Apply);
        services.AddSingleton<MatcherPolicy, ForPrograms>();
    }

    public static void MapOutsideTheApi(this WebApplication app)
    {
        app.MapOpenApi();
        app.MapGet("/fonts/{face}.ttf", FontFiles.Face).ExcludeFromDescription();
        app.MapGet("/fonts/licence.txt", FontFiles.Licence).ExcludeFromDescription();
        VerifyCertificate.MapPrinted(app);
    }
}
