using Traceability.Domain.Records;
using Traceability.Web.Features.Station.AbandonAttempt;
using Traceability.Web.Features.Station.AttachEvidence;
using Traceability.Web.Features.Station.Bench;
using Traceability.Web.Features.Station.CloseAttempt;
using Traceability.Web.Features.Station.FitInputs;
using Traceability.Web.Features.Station.MakeRecord;
using Traceability.Web.Features.Station.OpenAttempt;
using Traceability.Web.Features.Station.SignIn;
using Traceability.Web.Features.Station.TakeReadings;
using Traceability.Web.Http;
using PartReader = Traceability.Web.Features.Station.ReadPart.ReadPart;
using PartRegistration = Traceability.Web.Features.Station.RegisterPart.RegisterPart;
using SignInUse = Traceability.Web.Features.Station.SignIn.SignIn;

namespace Traceability.Web.Features.Station;

/// <summary>What happens at a bench: sign in, register, open, read, fit, evidence, close.</summary>
public static class StationApi
{
    /// <summary>The use cases behind the endpoints.</summary>
    public static void AddStation(this IServiceCollection services)
    {
        services.AddScoped<WorkBench>();
        services.AddScoped<SignInUse>();
        services.AddScoped<SessionCookie>();
        services.AddScoped<PartRegistration>();
        services.AddScoped<StartStage>();
        services.AddScoped<EnterReadings>();
        services.AddScoped<FitAtPositions>();
        services.AddScoped<KeepEvidence>();
        services.AddScoped<EndStage>();
        services.AddScoped<GiveUpStage>();
        services.AddScoped<RecordStage>();
    }

    public static void MapStation(this RouteGroupBuilder api)
    {
        api.MapPost("/sessions", SignInUse.HandleAsync).AllowAnonymous();
        api.MapPost("/parts", PartRegistration.HandleAsync).For(Role.Builder);
        api.MapGet("/parts/{serial}", PartReader.HandleAsync);
        api.MapGet("/parts/{serial}/gates", PartReader.GatesAsync);
        api.MapPost("/parts/{serial}/attempts", StartStage.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/parts/{serial}/records", RecordStage.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/attempts/{id:guid}/readings", EnterReadings.HandleAsync).For(Role.Builder, Role.Quality, Role.Instrument);
        api.MapPost("/attempts/{id:guid}/fittings", FitAtPositions.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/attempts/{id:guid}/evidence", KeepEvidence.HandleAsync).For(Role.Builder, Role.Quality, Role.Instrument);
        api.MapPost("/attempts/{id:guid}/close", EndStage.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/attempts/{id:guid}/abandon", GiveUpStage.HandleAsync).For(Role.Builder, Role.Quality);
    }
}
