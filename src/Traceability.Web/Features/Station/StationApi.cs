using Traceability.Domain.Records;
using Traceability.Persistence.Access;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Station.AbandonAttempt;
using Traceability.Web.Features.Station.AttachEvidence;
using Traceability.Web.Features.Station.Bench;
using Traceability.Web.Features.Station.CloseAttempt;
using Traceability.Web.Features.Station.Corrections;
using Traceability.Web.Features.Station.FitInputs;
using Traceability.Web.Features.Station.History;
using Traceability.Web.Features.Station.Labels;
using Traceability.Web.Features.Station.Loads;
using Traceability.Web.Features.Station.MakeRecord;
using Traceability.Web.Features.Station.Mates;
using Traceability.Web.Features.Station.OpenAttempt;
using Traceability.Web.Features.Station.PartLife;
using Traceability.Web.Features.Station.Removals;
using Traceability.Web.Features.Station.ScanBox;
using Traceability.Web.Features.Station.SignIn;
using Traceability.Web.Features.Station.TakeReadings;
using Traceability.Web.Http;
using AttemptReader = Traceability.Web.Features.Station.ReadAttempt.ReadAttempt;
using PartContents = Traceability.Web.Features.Station.MadeOf.MadeOf;
using PartLister = Traceability.Web.Features.Station.ListParts.ListParts;
using PartReader = Traceability.Web.Features.Station.ReadPart.ReadPart;
using PartRegistration = Traceability.Web.Features.Station.RegisterPart.RegisterPart;
using PartStory = Traceability.Web.Features.Station.PartLife.PartLife;
using SignInUse = Traceability.Web.Features.Station.SignIn.SignIn;

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
        services.AddScoped<SignInUse>();
        services.AddSingleton<SlowHashes>();
        services.AddScoped<PinTries>();
        services.AddScoped<PinProof>();
        services.AddScoped<PinSignature>();
        services.AddScoped<SessionCookie>();
        services.AddStationPages();
        services.AddScoped<PartRegistration>();
        services.AddScoped<StartStage>();
        services.AddScoped<EnterReadings>();
        services.AddScoped<SendingInstrument>();
        services.AddScoped<FitAtPositions>();
        services.AddScoped<KeepEvidence>();
        services.AddScoped<EndStage>();
        services.AddScoped<GiveUpStage>();
        services.AddScoped<RecordStage>();
        services.AddScoped<SendReading>();
        services.AddScoped<CorrectReading>();
        services.AddScoped<RemoveFitting>();
        services.AddScoped<LoadBench>();
        services.AddScoped<OpenLoad>();
        services.AddScoped<KeepLoadLog>();
        services.AddScoped<CloseLoad>();
        services.AddScoped<PartLister>();
        services.AddScoped<PartHistory>();
        services.AddScoped<PartContents>();
        services.AddScoped<PartStory>();
        services.AddScoped<EvidenceCharts>();
        services.AddScoped<FindMates>();
        services.AddScoped<AttemptReader>();
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
        KeepsNothing.On(api.MapPost("/sessions", SignInUse.HandleAsync).AllowAnonymous());
        api.MapDelete("/sessions/current", SignInUse.EndAsync).Produces(StatusCodes.Status204NoContent);
        api.MapPost("/parts", PartRegistration.HandleAsync).For(Role.Builder);
        api.MapGet("/parts/{serial}", PartReader.HandleAsync);
        api.MapGet("/parts/{serial}/gates", PartReader.GatesAsync);
        api.MapGet("/parts", PartLister.HandleAsync);
        api.MapGet("/parts/{serial}/history", PartHistory.HandleAsync);
        api.MapGet("/parts/{serial}/made-of", PartContents.HandleAsync);
        api.MapGet("/parts/{serial}/mates", FindMates.HandleAsync);
        api.MapPost("/parts/{serial}/removals", RemoveFitting.HandleAsync).For(Role.Builder, Role.Service);
        api.MapPost("/readings/{id:guid}/corrections", CorrectReading.HandleAsync).For(Role.Builder, Role.Quality);
        MapAttempts(api);
        MapLoads(api);
    }

    private static void MapAttempts(RouteGroupBuilder api)
    {
        api.MapPost("/parts/{serial}/attempts", StartStage.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/parts/{serial}/records", RecordStage.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/attempts/{id:guid}/readings", EnterReadings.HandleAsync).For(Role.Builder, Role.Quality, Role.Instrument);
        api.MapPost("/attempts/{id:guid}/fittings", FitAtPositions.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/attempts/{id:guid}/evidence", KeepEvidence.HandleAsync).For(Role.Builder, Role.Quality, Role.Instrument);
        api.MapPost("/attempts/{id:guid}/close", EndStage.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapPost("/attempts/{id:guid}/abandon", GiveUpStage.HandleAsync).For(Role.Builder, Role.Quality);
        api.MapGet("/attempts/{id:guid}", AttemptReader.HandleAsync);
        api.MapGet("/attempts/{id:guid}/evidence/{evidenceId:guid}", AttemptReader.EvidenceAsync);
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
