using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Setup.Instruments;
using Traceability.Web.Features.Setup.InstrumentTokens;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Features.Setup.Overview;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Features.Setup.Routes;
using Traceability.Web.Features.Setup.Stations;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup;

/// <summary>What the workshop is made of: people, stations, instruments, routes, lots.</summary>
public static class SetupApi
{
    public static void AddSetup(this IServiceCollection services)
    {
        services.AddScoped<FirstAccount>();
        services.AddScoped<SetupCounts>();
        services.AddScoped<AddPerson>();
        services.AddScoped<ChangePerson>();
        services.AddScoped<LastOfRole>();
        services.AddScoped<GivePinCode>();
        services.AddScoped<NewPin>();
        services.AddScoped<AddStation>();
        services.AddScoped<AddInstrument>();
        services.AddScoped<ProveInstrument>();
        services.AddScoped<IssueToken>();
        services.AddScoped<KnownKindsQuery>();
        services.AddScoped<LoadRoute>();
        services.AddScoped<RouteStandingQuery>();
        services.AddScoped<RouteRevisions>();
        services.AddScoped<KindsOfRoutes>();
        services.AddScoped<CompareRevisions>();
        services.AddScoped<ApproveRevision>();
        services.AddScoped<FilmLotRoute>();
        services.AddScoped<ReceiveLot>();
        services.AddScoped<DecideLot>();
        services.AddScoped<TallySample>();
    }

    public static void MapSetup(this RouteGroupBuilder api)
    {
        KeepsNothing.On(api.MapPost("/first-account", FirstAccount.HandleAsync).AllowAnonymous());
        api.MapGet("/people", ListPeople.HandleAsync);
        api.MapPost("/people", AddPerson.HandleAsync).For(Role.Lead);
        api.MapPost("/people/{badge}/roles", ChangePerson.SetRoleAsync).For(Role.Lead);
        api.MapPost("/people/{badge}/qualifications", ChangePerson.SetQualificationAsync).For(Role.Lead);
        api.MapPost("/people/{badge}/pin-code", GivePinCode.HandleAsync).For(Role.Lead);
        api.MapGet("/stations", AddStation.ListAsync);
        api.MapPost("/stations", AddStation.AddAsync).For(Role.Lead);
        api.MapGet("/instruments", ListInstruments.HandleAsync);
        api.MapPost("/instruments", AddInstrument.HandleAsync).For(Role.Lead);
        api.MapPost("/instruments/{code}/calibrations", ProveInstrument.CalibrateAsync).For(Role.Lead, Role.Quality);
        api.MapPost("/instruments/{code}/checks", ProveInstrument.CheckAsync).For(Role.Builder, Role.Quality, Role.Lead);
        api.MapGet("/instruments/{code}/tokens", IssueToken.ListAsync).For(Role.Lead);
        api.MapPost("/instruments/{code}/tokens", IssueToken.MakeAsync).For(Role.Lead);
        api.MapPost("/instruments/{code}/tokens/{id:guid}/revoke", IssueToken.RevokeAsync).For(Role.Lead);
        api.MapGet("/routes", ReadRoutes.ListAsync);
        api.MapGet("/routes/{model}/{kind}", ReadRoutes.OneAsync);
        api.MapGet("/routes/revisions", RouteRevisions.HandleAsync).For(Role.Lead, Role.Quality);
        api.MapGet("/routes/{model}/{kind}/comparison", CompareRevisions.HandleAsync).For(Role.Lead, Role.Quality);
        api.MapPost("/routes", LoadRoute.HandleAsync).For(Role.Lead);
        api.MapPost("/routes/{model}/{kind}/{revision:int}/approval", ApproveRevision.HandleAsync).For(Role.Lead, Role.Quality);
        api.MapGet("/lots", ReadLots.ListAsync);
        api.MapGet("/lots/{number}", ReadLots.OneAsync);
        api.MapPost("/lots", ReceiveLot.HandleAsync).For(Role.Quality, Role.Importer);
        api.MapPost("/lots/{number}/release", DecideLot.ReleaseAsync).For(Role.Quality);
        api.MapPost("/lots/{number}/quarantine", DecideLot.QuarantineAsync).For(Role.Quality);
    }
}
