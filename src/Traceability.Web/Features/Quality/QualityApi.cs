using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Features.Quality.Certificates;
using Traceability.Web.Features.Quality.Concessions;
using Traceability.Web.Features.Quality.Doubts;
using Traceability.Web.Features.Quality.GaugeStudies;
using Traceability.Web.Features.Quality.Holds;
using Traceability.Web.Features.Quality.Ledger;
using Traceability.Web.Features.Quality.Nonconformities;
using Traceability.Web.Features.Quality.Shipments;
using Traceability.Web.Features.Quality.Trace;
using Traceability.Web.Features.Quality.WhereUsed;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality;

/// <summary>What the quality lead asks and decides: nonconformities, holds, where a lot went, release.</summary>
public static class QualityApi
{
    public static void AddQuality(this IServiceCollection services)
    {
        services.AddScoped<ListNonconformities>();
        services.AddScoped<RaiseNonconformity>();
        services.AddScoped<DecideOnNonconformity>();
        services.AddScoped<ListHolds>();
        services.AddScoped<PutHold>();
        services.AddScoped<PreviewHold>();
        services.AddScoped<LiftHold>();
        services.AddScoped<ShipUnit>();
        services.AddScoped<VerifyAddress>();
        services.AddScoped<CertificateSources>();
        services.AddScoped<IssueCertificate>();
        services.AddScoped<ReadCertificates>();
        services.AddScoped<FindUses>();
        services.AddScoped<PermitQuery>();
        services.AddScoped<GiveConcession>();
        services.AddScoped<DesignGaugeStudy>();
        services.AddScoped<TraceQuery>();
        services.AddScoped<TracedStandings>();
        services.AddScoped<TraceParts>();
        services.AddScoped<DoubtfulPartsQuery>();
        services.AddScoped<DecideOnDoubts>();
        services.AddScoped<HoldTraced>();
        services.AddScoped<TracedHolds>();
        services.AddScoped<LiftTracedHold>();
        services.AddScoped<ReadLedger>();
        services.AddAnalyses();
    }

    public static void MapQuality(this RouteGroupBuilder api)
    {
        api.MapGet("/nonconformities", ListNonconformities.HandleAsync);
        api.MapPost("/parts/{serial}/nonconformities", RaiseNonconformity.HandleAsync).For(Role.Builder, Role.Quality, Role.Service);
        api.MapPost("/nonconformities/{id:guid}/disposition", DecideOnNonconformity.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/concessions", GiveConcession.ListAsync);
        api.MapPost("/quality/concessions", GiveConcession.GiveAsync).For(Role.Quality);
        api.MapGet("/quality/gauge-studies", DesignGaugeStudy.ListAsync);
        api.MapGet("/quality/gauge-studies/{number}", DesignGaugeStudy.OneAsync);
        api.MapPost("/quality/gauge-studies", DesignGaugeStudy.DesignAsync).For(Role.Quality);
        api.MapPost("/quality/gauge-studies/{number}/readings", DesignGaugeStudy.TakeAsync).For(Role.Builder, Role.Quality);
        api.MapGet("/holds", ListHolds.HandleAsync);
        api.MapPost("/holds", PutHold.HandleAsync).For(Role.Quality);
        api.MapPost("/holds/{id:guid}/release", LiftHold.HandleAsync).For(Role.Quality);
        api.MapPost("/parts/{serial}/shipments", ShipUnit.HandleAsync).For(Role.Quality);
        api.MapPost("/parts/{serial}/certificates", IssueCertificate.HandleAsync).For(Role.Quality);
        api.MapGet("/parts/{serial}/certificates", ReadCertificates.ListAsync);
        api.MapGet("/parts/{serial}/certificate.pdf", ReadCertificates.LatestPdfAsync);
        api.MapGet("/parts/{serial}/certificates/{revision:int}.pdf", ReadCertificates.PdfAsync);
        api.MapGet("/parts/{serial}/certificates/{revision:int}.json", ReadCertificates.JsonAsync);
        api.MapGet("/lots/{number}/where-used", FindUses.HandleAsync).For(Role.Quality, Role.Service);
        api.MapGet("/instruments/{code}/affected", TraceParts.AffectedAsync).For(Role.Quality, Role.Service);
        api.MapPost("/instruments/{code}/affected/decisions", DecideOnDoubts.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/trace", TraceParts.HandleAsync).For(Role.Quality, Role.Service);
        api.MapPost("/quality/trace/holds", HoldTraced.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/trace/holds", TracedHolds.ListAsync).For(Role.Quality);
        api.MapGet("/quality/trace/holds/{id:guid}", TracedHolds.OneAsync).For(Role.Quality);
        api.MapPost("/quality/trace/holds/{id:guid}/release", LiftTracedHold.HandleAsync).For(Role.Quality);
        api.MapGet("/ledger/{serial}", ReadLedger.HandleAsync).For(Role.Quality);
        api.MapAnalyses();
    }
}
