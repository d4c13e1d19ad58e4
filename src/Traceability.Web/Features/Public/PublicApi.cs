using Traceability.Web.Features.Public.Fonts;

namespace Traceability.Web.Features.Public;

/// <summary>What anybody may see without signing in.</summary>
public static class PublicApi
{
    public static void MapPublic(this WebApplication app)
    {
        app.MapOpenApi();
        app.MapGet("/fonts/{face}.ttf", FontFiles.Face).ExcludeFromDescription();
        app.MapGet("/fonts/licence.txt", FontFiles.Licence).ExcludeFromDescription();
    }
}
