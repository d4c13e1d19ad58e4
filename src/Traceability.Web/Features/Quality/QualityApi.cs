namespace Traceability.Web.Features.Quality;

/// <summary>The endpoints of this part of the house.</summary>
public static class QualityApi
{
    public static void AddQuality(this IServiceCollection services)
    {
    }

    public static void MapQuality(this RouteGroupBuilder api)
    {
    }
}
