using Traceability.Web.Features.Public;
using Traceability.Web.Features.Quality;
using Traceability.Web.Features.Service;
using Traceability.Web.Features.Setup;
using Traceability.Web.Features.Station;
using Traceability.Web.Hosting;
using Traceability.Web.Hosting.Commands;

if (CommandLine.Find(args) is { } command)
{
    return await command(args);
}

var builder = WebApplication.CreateBuilder(CommandLine.HostOptions(args));
builder.AddWorkshopLog();
builder.AddWorkshopLanguage();
builder.AddWorkshopDatabase();
builder.AddSignIn();
builder.AddHttpRules();
builder.AddDemonstration(CommandLine.Demonstration(args));
builder.Services.AddStation();
builder.Services.AddQuality();
builder.Services.AddService();
builder.Services.AddSetup();
builder.Services.AddPublic();
builder.AddEarlyStart();

var app = builder.Build();
app.UseHttpRules();
app.MapHealth();

var api = app.MapGroup("/api/v1").RequireAuthorization();
api.MapStation();
api.MapQuality();
api.MapService();
api.MapSetup();
app.MapPublic();
app.MapRazorPages();

return await app.RunToEndAsync();
