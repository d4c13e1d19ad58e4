using System.Text.Unicode;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.WebEncoders;
using Serilog;
using Serilog.Events;
using Traceability.Migrations;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;
using Traceability.Web.Http.Description;

namespace Traceability.Web.Hosting;

/// <summary>The steps of Program.cs.</summary>
public static class WorkshopHosting
{
    /// <summary>Logs to the console and to a rolling file in the data folder, one line a request.</summary>
    public static void AddWorkshopLog(this WebApplicationBuilder builder)
    {
        const string line = "{Timestamp:yyyy-MM-dd HH:mm:ss.fff zzz} {Level:u3} {RequestId} {Message:lj}{NewLine}{Exception}";
        var file = Path.Combine(DataFolder.Of(builder.Configuration), "logs", "traceability-.log");
        builder.Services.AddSerilog(log =>
            log.MinimumLevel.Information()
                .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
                .MinimumLevel.Override("Microsoft.Hosting.Lifetime", LogEventLevel.Information)
                .Filter.ByExcluding(UnencryptedKeysWarning.IsTold)
                .Filter.ByExcluding(StartFailure.IsTold)
                .Enrich.FromLogContext()
                .WriteTo.Console(outputTemplate: line, formatProvider: System.Globalization.CultureInfo.InvariantCulture)
                .WriteTo.File(
                    file,
                    outputTemplate: line,
                    rollingInterval: RollingInterval.Day,
                    retainedFileCountLimit: 30,
                    fileSizeLimitBytes: 50_000_000,
                    rollOnFileSizeLimit: true,
                    formatProvider: System.Globalization.CultureInfo.InvariantCulture
                )
        );
    }

    /// <summary>The database, the record book and the readers.</summary>
    public static void AddWorkshopDatabase(this WebApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddSingleton<WorkshopDatabase>();
        services.AddHostedService(s => s.GetRequiredService<WorkshopDatabase>());
        services.AddSingleton<Readiness>();
        services.AddDbContextPool<WorkshopContext>(
            (s, options) => WorkshopOptions.Apply(options, s.GetRequiredService<WorkshopDatabase>().AppConnectionString)
        );
        services.AddSingleton<RouteShelf>();
        services.AddScoped<DossierReader>();
        services.AddScoped<RecordBook>();
        services.AddScoped<InstrumentQuery>();
        services.AddScoped<LotQuery>();
        services.AddScoped<EvidenceQuery>();
        services.AddScoped<JudgedOnQuery>();
        services.AddDataProtection().SetApplicationName("traceability").PersistKeysToDbContext<WorkshopContext>();
        services.AddSingleton<CurrentWorkshop>();
        services.AddScoped<WorkshopQuery>();
        services.AddScoped(s => s.GetRequiredService<CurrentWorkshop>().Calendar);
    }

    /// <summary>The demonstration, when it was asked for.</summary>
    public static void AddDemonstration(this WebApplicationBuilder builder, DemonstrationWish wish)
    {
        builder.Services.AddSingleton(wish);
        builder.Services.AddSingleton<Foundation>();
        builder.Services.AddSingleton<Demonstration>();
        builder.Services.AddHostedService(s => s.GetRequiredService<Demonstration>());
        if (wish.EndAfterwards)
        {
            builder.WebHost.UseUrls("http://127.0.0.1:0");
        }
    }

    /// <summary>Sessions by token or cookie.</summary>
    public static void AddSignIn(this WebApplicationBuilder builder)
    {
        builder
            .Services.AddAuthentication(SessionAuthentication.SchemeName)
            .AddScheme<Microsoft.AspNetCore.Authentication.AuthenticationSchemeOptions, SessionAuthentication>(
                SessionAuthentication.SchemeName,
                null
            );
        builder.Services.AddAuthorization();
        builder.Services.AddAntiforgery(a => a.HeaderName = "RequestVerificationToken");
    }

    /// <summary>JSON, problems, pages and limits.</summary>
    public static void AddHttpRules(this WebApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddSingleton(TimeProvider.System);
        services.AddHttpContextAccessor();
        services.AddAnonymousLimits();
        services.AddScoped<Writes>();
        services.ConfigureHttpJsonOptions(o => JsonRules.Apply(o.SerializerOptions));
        services.Configure<RouteHandlerOptions>(o => o.ThrowOnBadRequest = true);
        services.AddProblemDetails();
        services.AddExceptionHandler<ExceptionAnswers>();
        services.AddCompressedBodies();
        services.AddLocalization();
        services.Configure<WebEncoderOptions>(o => o.TextEncoderSettings = new(UnicodeRanges.All));
        services.AddRazorPages(o =>
        {
            o.RootDirectory = "/Features";
            o.Conventions.AuthorizeFolder("/");
        });
        services.AddScoped<Display>();
        services.AddScoped<WorkshopNotice>();
        services.AddOpenApi("v1", ApiDocument.Apply);
        builder.WebHost.ConfigureKestrel(k => k.Limits.MaxRequestBodySize = 64L * 1024 * 1024);
        builder.WebHost.UseUrls(builder.Configuration["TRACEABILITY_URL"] ?? "http://127.0.0.1:5080");
    }

    /// <summary>What every request passes through, in this order.</summary>
    public static void UseHttpRules(this WebApplication app)
    {
        app.UseSerilogRequestLogging(o =>
        {
            o.GetLevel = RequestLine.Level;
            o.MessageTemplate = "{RequestMethod} {RequestPath} {StatusCode} {Elapsed:0.0} ms";
            o.GetMessageTemplateProperties = RequestLine.Properties;
            o.EnrichDiagnosticContext = (log, context) => log.Set("RequestId", context.TraceIdentifier);
        });
        app.UseWorkshopLanguage();
        app.UseExceptionHandler();
        app.UseWhen(PageProblems.IsPage, pages => pages.UseStatusCodePagesWithReExecute("/problem/{0}"));
        app.UseWhen(
            context => !PageProblems.IsPage(context),
            programs =>
                programs.UseStatusCodePages(ended =>
                    ProblemAnswers.OfStatus(ended.HttpContext.Response.StatusCode).ExecuteAsync(ended.HttpContext)
                )
        );
        app.Use(SecurityHeaders.AddAsync);
        app.Use(StartBesideDatabase.RefuseUntilReadyAsync);
        app.UseStaticFiles(
            new StaticFileOptions
            {
                OnPrepareResponse = file =>
                    file.Context.Response.Headers.CacheControl = file.Context.Request.Query.ContainsKey("v")
                        ? "public, max-age=31536000, immutable"
                        : "no-cache",
            }
        );
        app.Use(CurrentWorkshop.AskAsync);
        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseRateLimiter();
        app.Use(AnonymousLimits.LimitBodyAsync);
        app.Use(InstrumentsOnlySend.RefuseOthersAsync);
        app.Use(CookieWrites.RequireTokenAsync);
        app.Use(KnownQuery.RefuseOthersAsync);
        app.UseCompressedBodies();
        app.Use(Writes.HashBodyAsync);
    }
}
