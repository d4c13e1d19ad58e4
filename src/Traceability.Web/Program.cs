using Traceability.Web.Features.Public;
using Traceability.Web.Features.Quality;
using Traceability.Web.Features.Service;
using Traceability.Web.Features.Setup;
using Traceability.Web.Features.Station;
using Traceability.Web.Hosting;
using Traceability.Web.Hosting.Commands;

var asked = new CommandLine(args);
if (!asked.Serves)
{
    return await asked.RunAsync();
}

var builder = WebApplication.CreateBuilder(asked.HostOptions);
if (!builder.MayStart())
{
    return 1;
}

builder.AddWorkshopLog();
builder.AddWorkshopLanguage();
builder.AddWorkshopDatabase();
builder.AddSignIn();
builder.AddHttpRules();
builder.AddDemonstration(asked.Demonstration);
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
