using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.Configuration;
using Traceability.Web.Hosting;

namespace Traceability.Web.Tests.Http;

public class WorkshopLanguageTests
{
    private static IConfiguration Set(string? language) =>
        new ConfigurationBuilder().AddInMemoryCollection([new("TRACEABILITY_LANGUAGE", language)]).Build();

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("en")]
    public void A_workshop_works_in_English_unless_it_says_otherwise(string? setting) =>
        Assert.Equal("en", WorkshopLanguage.Of(Set(setting)).Name);

    [Theory]
    [InlineData("sv", "Swedish")]
    [InlineData("de", "German")]
    [InlineData("de-CH", "German (Switzerland)")]
    public void A_language_without_words_is_English_and_one_line_says_so(string setting, string called)
    {
        Assert.Equal("en", WorkshopLanguage.Of(Set(setting)).Name);
        Assert.Null(WorkshopLanguage.Problem(Set(setting)));
        Assert.StartsWith(
            $"TRACEABILITY_LANGUAGE is '{setting}' ({called}), a language without words here: everything is said in English.",
            WorkshopLanguage.Notice(Set(setting)),
            StringComparison.Ordinal
        );
        Assert.Null(WorkshopLanguage.Notice(Set("en")));
    }

    [Theory]
    [InlineData("deutsch")]
    [InlineData("x y")]
    public void What_is_no_language_is_refused_at_the_start_in_one_line(string setting)
    {
        var problem = WorkshopLanguage.Problem(Set(setting))!;
        Assert.StartsWith($"TRACEABILITY_LANGUAGE is '{setting}', which is no language", problem, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem);
    }

    [Fact]
    public async Task A_request_is_answered_in_the_language_of_the_workshop_whatever_the_browser_or_the_computer_prefers()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseTestServer();
        builder.Configuration["TRACEABILITY_LANGUAGE"] = "en";
        await using var app = builder.Build();
        app.Use(
            async (_, next) =>
            {
                (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (
                    CultureInfo.GetCultureInfo("de-DE"),
                    CultureInfo.GetCultureInfo("de-DE")
                );
                await next();
            }
        );
        app.UseWorkshopLanguage();
        app.MapGet("/", () => string.Create(CultureInfo.CurrentCulture, $"{CultureInfo.CurrentUICulture.Name} {12.5m}"));
        await app.StartAsync();
        using var client = app.GetTestClient();
        client.DefaultRequestHeaders.Add("Accept-Language", "de-DE");

        Assert.Equal("en 12.5", await client.GetStringAsync("/?culture=de-DE"));
    }
}
