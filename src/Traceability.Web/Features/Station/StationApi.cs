using Traceability.Domain.Records;
using Traceability.Persistence.Access;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Parts.History;
using Traceability.Web.Features.Parts.Labels;
using Traceability.Web.Features.Parts.Life;
using Traceability.Web.Features.Parts.Lists;
using Traceability.Web.Features.Parts.Overview;
using Traceability.Web.Features.Parts.Structure;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Station.Loads;
using Traceability.Web.Features.Station.Mates;
using Traceability.Web.Features.Station.NewParts;
using Traceability.Web.Features.Station.ScanBox;
using Traceability.Web.Features.Station.StageWork;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station;

/// <summary>What happens at a bench: sign in, register, open, read, fit, evidence, close.</summary>
public static class StationApi
{
    /// <summary>The use cases behind the endpoints.</summary>
    public static void AddStation(this IServiceCollection services)
    {
        services.AddScoped<WorkBench>();
        services.AddScoped<StandingQuery>();
        services.AddScoped<PartsNow>();
        services.AddScoped<SignIn>();
        services.AddSingleton<SlowHashes>();
        services.AddScoped<PinTries>();
        services.AddScoped<PinProof>();
        services.AddScoped<PinSignature>();
        services.AddScoped<SessionCookie>();
        services.AddStationPages();
        services.AddScoped<RegisterPart>();
        services.AddScoped<OpenAttempt>();
        services.AddScoped<TakeReadings>();
        services.AddScoped<SendingInstrument>();
        services.AddScoped<FitInputs>();
        services.AddScoped<AttachEvidence>();
        services.AddScoped<CloseAttempt>();
        services.AddScoped<AbandonAttempt>();
        services.AddScoped<MakeRecord>();
        services.AddScoped<SendReading>();
        services.AddScoped<CorrectReading>();
        services.AddScoped<RemoveFitting>();
        services.AddScoped<LoadBench>();
        services.AddScoped<OpenLoad>();
        services.AddScoped<KeepLoadLog>();
        services.AddScoped<CloseLoad>();
        services.AddScoped<ListParts>();
        services.AddScoped<PartHistory>();
        services.AddScoped<ReadMadeOf>();
        services.AddScoped<PartLife>();
        services.AddScoped<EvidenceCharts>();
        services.AddScoped<FindMates>();
        services.AddScoped<ReadAttempt>();
        services.AddScoped<NameQuery>();
        services.AddScoped<ElsewhereQuery>();
        services.AddScoped<InsideQuery>();
    }

    /// <summary>What the pages at the bench need beside the use cases.</summary>
    public static void AddStationPages(this IServiceCollection services)
    {
        services.AddScoped<Seats>();
        services.AddScoped<Lookups>();
        services.AddScoped<InstrumentsAfter>();
        services.AddScoped<NeedsReader>();
        services.AddScoped<StationSignIn>();
        services.AddScoped<CarryOut>();
        services.AddScoped<ScanDesk>();
        services.AddScoped<StationFile>();
        services.AddScoped<StationViewReader>();
        services.AddScoped<BenchQuery>();
        services.AddScoped<LabelQuery>();
    }

    public static void MapStation(this RouteGroupBuilder api)
    {
        KeepsNothing.On(api.MapPost("/sessions", SignIn.HandleAsync).AllowAnonymous());
        api.MapDelete("/sessions/current", SignIn.EndAsync).Produces(StatusCodes.Status204NoContent);
        api.MapPost("/parts", RegisterPart.HandleAsync).For(Role.Builder);
        api.MapGet("/parts/{serial}", ReadPart.HandleAsync);
        api.MapGet("/parts/{serial}/gates", ReadPart.GatesAsync);
        api.MapGet("/parts", ListParts.HandleAsync);
        api.MapGet("/parts/{serial}/history", PartHistory.HandleAsync);
        api.MapGet("/parts/{serial}/made-of", ReadMadeOf.HandleAsync);
        api.MapGet("/parts/{serial}/mates", FindMates.HandleAsync);
        api.MapPost("/parts/{serial}/removals", RemoveFitting.HandleAsync).For(Role.Builder, Role.Service);
        api.MapPost("/readings/{id:guid}/corrections", CorrectReading.HandleAsync).For(Role.Builder, Role.Quality);
        MapAttempts(api);
        MapLoads(api);
    }

    private static void MapAttempts(RouteGroupBuilder api)
    {
        api.MapPost("/parts/{serial}/attempts", OpenAttempt.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/parts/{serial}/records", MakeRecord.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/attempts/{id:guid}/readings", TakeReadings.HandleAsync).For(Role.Builder, Role.Quality, Role.Instrument);
        api.MapPost("/attempts/{id:guid}/fittings", FitInputs.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/attempts/{id:guid}/evidence", AttachEvidence.HandleAsync).For(Role.Builder, Role.Quality, Role.Instrument);
        api.MapPost("/attempts/{id:guid}/close", CloseAttempt.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/attempts/{id:guid}/abandon", AbandonAttempt.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapGet("/attempts/{id:guid}", ReadAttempt.HandleAsync);
        api.MapGet("/attempts/{id:guid}/evidence/{evidenceId:guid}", ReadAttempt.EvidenceAsync);
        api.MapPost("/stations/{code}/readings", SendReading.HandleAsync).For(Role.Builder, Role.Instrument);
    }

    private static void MapLoads(RouteGroupBuilder api)
    {
        api.MapPost("/loads", OpenLoad.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapGet("/loads/{id:guid}", ReadLoad.HandleAsync);
        api.MapPost("/loads/{id:guid}/log", KeepLoadLog.HandleAsync).For(Role.Builder, Role.Quality, Role.Instrument);
        api.MapPost("/loads/{id:guid}/close", CloseLoad.HandleAsync).For(Role.Builder, Role.Quality);
    }
}
