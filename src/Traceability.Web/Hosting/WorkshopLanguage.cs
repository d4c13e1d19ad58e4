using System.Globalization;
using Microsoft.AspNetCore.Localization;
using Traceability.Domain.Gates.Rules;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Hosting;

/// <summary>
/// The language that the workshop works in, one for everybody who reads its records: <c>TRACEABILITY_LANGUAGE</c>, else what the workshop's
/// page says, else English. What a browser would prefer is not asked, because what is said is also stored, and everybody reads it there.
/// </summary>
public static class WorkshopLanguage
{
    private const string Setting = WorkshopOverrides.LanguageSetting,
        English = "en";

    private static readonly Lazy<IReadOnlySet<string>> Translated = new(() =>
        Directory
            .EnumerateDirectories(AppContext.BaseDirectory)
            .Select(folder => Path.GetFileName(folder)!)
            .Where(name => Find(name) is { } language && HasWords(language))
            .Append(English)
            .ToHashSet()
    );

    /// <summary>The languages that have words, by their short names.</summary>
    public static IReadOnlySet<string> WithWords => Translated.Value;

    /// <summary>The language of the setting; English where that has no words here.</summary>
    public static CultureInfo Of(IConfiguration configuration) =>
        Find(NameOf(configuration)) is { } language && HasWords(language) ? language : CultureInfo.GetCultureInfo(English);

    /// <summary>
    /// What is wrong with the setting, in one line, or null: what is no language is not passed over, because it may be misspelt.
    /// </summary>
    public static string? Problem(IConfiguration configuration) =>
        Find(NameOf(configuration)) is not null
            ? null
            : $"{Setting} is '{NameOf(configuration)}', which is no language: give its short name, such as 'en', or leave it out for"
                + " English.";

    /// <summary>What is to be said about the setting, in one line, or null: a language that has no words yet.</summary>
    public static string? Notice(IConfiguration configuration) =>
        Find(NameOf(configuration)) is { } language && !HasWords(language)
            ? $"{Setting} is '{language.Name}' ({language.EnglishName}), a language without words here: everything is said in English."
                + " DEVELOPERS.md says how another is added."
            : null;

    /// <summary>What the service says by itself, outside of a request.</summary>
    public static void AddWorkshopLanguage(this WebApplicationBuilder builder) =>
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.CurrentUICulture = Of(builder.Configuration);

    /// <summary>
    /// What is said in answer to a request. Numbers are written alike in every language, with the digits that were entered.
    /// </summary>
    public static void UseWorkshopLanguage(this IApplicationBuilder app)
    {
        var configuration = app.ApplicationServices.GetRequiredService<IConfiguration>();
        if (Notice(configuration) is { } notice)
        {
            app.ApplicationServices.GetRequiredService<ILoggerFactory>()
                .CreateLogger(typeof(WorkshopLanguage))
                .LogWarning("{Notice}", notice);
        }

        app.UseRequestLocalization(
            new RequestLocalizationOptions
            {
                DefaultRequestCulture = new RequestCulture(CultureInfo.InvariantCulture, Of(configuration)),
                SupportedCultures = [CultureInfo.InvariantCulture],
                SupportedUICultures = [Of(configuration), .. WithWords.Select(CultureInfo.GetCultureInfo)],
                RequestCultureProviders =
                [
                    // Unless it was set at the start, it is what the workshop's page says.
                    new CustomRequestCultureProvider(context =>
                        Task.FromResult<ProviderCultureResult?>(
                            string.IsNullOrEmpty(configuration[Setting])
                                ? new("", context.RequestServices.GetRequiredService<CurrentWorkshop>().Language)
                                : null
                        )
                    ),
                ],
            }
        );
    }

    private static string NameOf(IConfiguration configuration) => configuration[Setting] is { Length: > 0 } set ? set : English;

    private static CultureInfo? Find(string name)
    {
        try
        {
            return CultureInfo.GetCultureInfo(name, predefinedOnly: true);
        }
        catch (CultureNotFoundException)
        {
            return null;
        }
    }

    // The gates have words in a language when somebody has put a GateTexts.de.resx, or the like, beside theirs.
    private static bool HasWords(CultureInfo language)
    {
        try
        {
            return language.TwoLetterISOLanguageName == English || typeof(Gatekeeper).Assembly.GetSatelliteAssembly(language) is not null;
        }
        catch (FileNotFoundException)
        {
            return false;
        }
    }
}
