using Traceability.Domain.Records;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Causes;
using Traceability.Web.Features.Quality.ControlCharts;
using Traceability.Web.Features.Quality.Desk;
using Traceability.Web.Features.Quality.FilmLots;
using Traceability.Web.Features.Quality.Notices;
using Traceability.Web.Features.Quality.Reports;
using Traceability.Web.Features.Quality.Yields;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Analyses;

/// <summary>The analyses of the quality lead's desk.</summary>
public static class AnalysesApi
{
    public static void AddAnalyses(this IServiceCollection services)
    {
        services.AddScoped<AnalysisFilters>();
        services.AddScoped<FilmLotQuery>();
        services.AddScoped<FilmBackQuery>();
        services.AddScoped<FilmPartsQuery>();
        services.AddScoped<CompareFilmLots>();
        services.AddScoped<ListFilmLotParts>();
        services.AddScoped<CauseQuery>();
        services.AddScoped<RankCauses>();
        services.AddScoped<ChartQuery>();
        services.AddScoped<DrawChart>();
        services.AddScoped<ReadPareto>();
        services.AddScoped<FailedSamples>();
        services.AddScoped<YieldQuery>();
        services.AddScoped<ReadYield>();
        services.AddScoped<WatchQuery>();
        services.AddScoped<ReadNotices>();
        services.AddScoped<AcknowledgeNotice>();
        services.AddScoped<MonthQuery>();
        services.AddScoped<GatherMonth>();
        services.AddScoped<ReadMonthlyReport>();
    }

    public static void MapAnalyses(this RouteGroupBuilder api)
    {
        api.MapGet("/quality/film-lots", CompareFilmLots.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/film-lots/{number}/parts", ListFilmLotParts.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/causes", RankCauses.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/causes/parts", RankCauses.PartsAsync).For(Role.Quality);
        api.MapGet("/quality/control-chart", DrawChart.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/pareto", ReadPareto.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/yield", ReadYield.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/notices", ReadNotices.HandleAsync).For(Role.Quality);
        api.MapPost("/quality/notices/{key}/acknowledge", AcknowledgeNotice.HandleAsync).For(Role.Quality);
        api.MapGet("/quality/monthly-report.pdf", ReadMonthlyReport.PdfAsync).For(Role.Quality);
        api.MapGet("/quality/monthly-report.json", ReadMonthlyReport.JsonAsync).For(Role.Quality);
    }
}
