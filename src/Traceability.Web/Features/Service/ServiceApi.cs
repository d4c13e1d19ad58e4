using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Service.Returns;
using Traceability.Web.Features.Service.Search;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service;

/// <summary>What the service desk needs: the look-up box and returns.</summary>
public static class ServiceApi
{
    public static void AddService(this IServiceCollection services)
    {
        services.AddScoped<SearchQuery>();
        services.AddScoped<LookUp>();
        services.AddScoped<TakeBack>();
        services.AddScoped<ListReturns>();
    }

    public static void MapService(this RouteGroupBuilder api)
    {
        api.MapGet("/search", LookUp.HandleAsync);
        api.MapGet("/returns", ListReturns.HandleAsync).For(Role.Service, Role.Quality);
        api.MapGet("/returns/{id:guid}", ListReturns.OneAsync).For(Role.Service, Role.Quality);
        api.MapPost("/returns", TakeBack.OpenAsync).For(Role.Service);
        api.MapPost("/returns/{id:guid}/findings", TakeBack.FindAsync).For(Role.Service);
        api.MapPost("/returns/{id:guid}/outcome", TakeBack.ComeOutAsync).For(Role.Service);
        api.MapPost("/returns/{id:guid}/close", TakeBack.CloseAsync).For(Role.Service);
    }
}
