namespace Traceability.Web.Features.Service;

/// <summary>The endpoints of this part of the house.</summary>
public static class ServiceApi
{
    public static void AddService(this IServiceCollection services)
    {
    }

    public static void MapService(this RouteGroupBuilder api)
    {
    }
}
