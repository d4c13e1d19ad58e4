namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>The time zones that a workshop may name: those of the IANA database that this machine knows.</summary>
internal static class TimeZones
{
    private static readonly Lazy<IReadOnlySet<string>> Known = new(() =>
        TimeZoneInfo.GetSystemTimeZones().Where(z => z.HasIanaId).Select(z => z.Id).Append("UTC").ToHashSet(StringComparer.Ordinal)
    );

    /// <summary>All their names.</summary>
    public static IReadOnlySet<string> All => Known.Value;
}
