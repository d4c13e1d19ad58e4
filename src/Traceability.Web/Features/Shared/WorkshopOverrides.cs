namespace Traceability.Web.Features.Shared;

/// <summary>
/// What environment variables say of the workshop; null where one is not set. They go before what the workshop's page says.
/// </summary>
public sealed record WorkshopOverrides(string? Name, string? TimeZone, string? PublicUrl, string? Language)
{
    /// <summary>The names of the variables.</summary>
    public const string NameSetting = "TRACEABILITY_WORKSHOP",
        TimeZoneSetting = "TRACEABILITY_TIMEZONE",
        PublicUrlSetting = "TRACEABILITY_PUBLIC_URL",
        LanguageSetting = "TRACEABILITY_LANGUAGE";

    /// <summary>What is set.</summary>
    public static WorkshopOverrides Of(IConfiguration configuration)
    {
        return new(Value(NameSetting), Value(TimeZoneSetting), Value(PublicUrlSetting), Value(LanguageSetting));

        string? Value(string setting) => string.IsNullOrWhiteSpace(configuration[setting]) ? null : configuration[setting]!.Trim();
    }

    /// <summary>The fields that are set so, as the contract calls them, with their variables.</summary>
    public IReadOnlyList<(string Field, string Setting)> Fields =>
        [
            .. new (string Field, string Setting, string? Value)[]
            {
                ("name", NameSetting, Name),
                ("timeZone", TimeZoneSetting, TimeZone),
                ("publicUrl", PublicUrlSetting, PublicUrl),
                ("language", LanguageSetting, Language),
            }
                .Where(f => f.Value is not null)
                .Select(f => (f.Field, f.Setting)),
        ];
}
