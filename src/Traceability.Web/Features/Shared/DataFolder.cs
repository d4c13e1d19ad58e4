namespace Traceability.Web.Features.Shared;

/// <summary>Where the service keeps its private database and its logs.</summary>
public static class DataFolder
{
    /// <summary><c>TRACEABILITY_DATA</c>, else /var/lib/traceability for root and the user's own share folder for everybody else.</summary>
    public static string Of(IConfiguration configuration) =>
        configuration["TRACEABILITY_DATA"] is { Length: > 0 } set ? Path.GetFullPath(set)
        : Environment.IsPrivilegedProcess ? "/var/lib/traceability"
        : Path.Combine(
            Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify),
            "traceability"
        );
}
