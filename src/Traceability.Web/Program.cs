using Traceability.Web.Features;
using Traceability.Web.Hosting;
using Traceability.Web.Hosting.Commands;
using Traceability.Web.Http.Answers;

Contents[] features =
[
    AccessContents.All,
    PartsContents.All,
    StationContents.All,
    QualityContents.All,
    ServiceContents.All,
    SetupContents.All,
    PublicContents.All,
];

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
builder.Services.AddOutsideTheApi();
foreach (var feature in features)
{
    feature.AddTo(builder.Services);
}

builder.AddStartBesideDatabase();

var app = builder.Build();
app.UseHttpRules();
app.MapHealth();

var api = app.MapGroup("/api/v1").RequireAuthorization();
foreach (var feature in features)
{
    feature.MapTo(api);
}

app.MapOutsideTheApi();
app.MapRazorPages();

return await app.RunToEndAsync();
