namespace Traceability.Web.Features.Public;

/// <summary>What anybody may see without signing in.</summary>
public static class PublicApi
{
    public static void MapPublic(this WebApplication app) => app.MapOpenApi();
}
