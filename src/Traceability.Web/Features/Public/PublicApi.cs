using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.OpenApi;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Public.Docs;
using Traceability.Web.Features.Public.Fonts;
using Traceability.Web.Features.Public.Verify;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Public;

/// <summary>What anybody may see without signing in.</summary>
public static class PublicApi
{
    private const string VerifyById = "/verify/{certificateId}";

    public static void MapPublic(this WebApplication app)
    {
        app.MapOpenApi();
        app.MapGet("/fonts/{face}.ttf", FontFiles.Face).ExcludeFromDescription();
        app.MapGet("/fonts/licence.txt", FontFiles.Licence).ExcludeFromDescription();
        MapVerify(app.MapGroup("/api/v1"));
        KeepsNothing.On(app.MapPost("/api/v1/pins", SetPin.HandleAsync).AllowAnonymous());
        ForPrograms.On(app.MapGet(VerifyById, VerifyCertificate.HandleAsync).ExcludeFromDescription());
    }

    public static void AddPublic(this IServiceCollection services)
    {
        services.Configure<OpenApiOptions>("v1", ApiNames.Apply);
        services.AddScoped<VerifyCertificate>();
        services.AddScoped<SetPin>();
        services.AddScoped<ApiGuide>();
        services.AddSingleton<MatcherPolicy, ForPrograms>();
    }

    private static void MapVerify(RouteGroupBuilder api)
    {
        api.MapGet(VerifyById, VerifyCertificate.HandleAsync);
        api.MapPost("/verify", VerifyCertificate.HandleFileAsync)
            .WithMetadata(new AcceptsMetadata(["application/pdf"], typeof(Stream)), new OpenBodyAttribute(VerifyCertificate.MaxBytes));
    }
}
