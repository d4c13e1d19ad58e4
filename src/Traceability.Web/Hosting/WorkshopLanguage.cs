using System.Globalization;
using Microsoft.AspNetCore.Localization;
using Traceability.Domain.Gates;

namespace Traceability.Web.Hosting;

/// <summary>
/// The language that the workshop works in, one for everybody who reads its records: <c>TRACEABILITY_LANGUAGE</c>, English unless it says
/// otherwise. What a browser would prefer is not asked, because what is said is also stored, and everybody reads it there.
/// </summary>
public static class WorkshopLanguage
{
    /// <summary>The language of the setting; one that has no words is an error, so that a misspelt one is not passed over.</summary>
    public static CultureInfo Of(IConfiguration configuration)
    {
        var name = configuration["TRACEABILITY_LANGUAGE"] is { Length: > 0 } set ? set : "en";
        return HasWords(name) ? CultureInfo.GetCultureInfo(name)
            : throw new InvalidOperationException($"TRACEABILITY_LANGUAGE is '{name}', a language without words here. Leave it out for English, 'en'; DEVELOPERS.md says how another is added.");
    }

    /// <summary>What the service says by itself, outside of a request.</summary>
    public static void AddWorkshopLanguage(this WebApplicationBuilder builder) =>
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.CurrentUICulture = Of(builder.Configuration);

    /// <summary>What is said in answer to a request. Numbers are written alike in every language, with the digits that were entered.</summary>
    public static void UseWorkshopLanguage(this IApplicationBuilder app)
    {
        var language = Of(app.ApplicationServices.GetRequiredService<IConfiguration>());
        app.UseRequestLocalization(new RequestLocalizationOptions
        {
            DefaultRequestCulture = new RequestCulture(CultureInfo.InvariantCulture, language),
            SupportedCultures = [CultureInfo.InvariantCulture],
            SupportedUICultures = [language],
            RequestCultureProviders = [],
        });
    }

    // The gates have words in a language when somebody has put a GateTexts.de.resx, or the like, beside theirs.
    private static bool HasWords(string name)
    {
        try
        {
            var language = CultureInfo.GetCultureInfo(name, predefinedOnly: true);
            return language.TwoLetterISOLanguageName == "en" || typeof(Gatekeeper).Assembly.GetSatelliteAssembly(language) is not null;
        }
        catch (Exception unknown) when (unknown is CultureNotFoundException or FileNotFoundException)
        {
            return false;
        }
    }
}
