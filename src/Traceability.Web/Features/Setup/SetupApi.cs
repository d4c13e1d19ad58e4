namespace Traceability.Web.Features.Setup;

/// <summary>The endpoints of this part of the house.</summary>
public static class SetupApi
{
    public static void AddSetup(this IServiceCollection services)
    {
    }

    public static void MapSetup(this RouteGroupBuilder api)
    {
    }
}
