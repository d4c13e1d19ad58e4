namespace Traceability.Web.Features.Shared;

/// <summary>Names of the workshop's settings.</summary>
public static class WorkshopSettings
{
    /// <summary>Present when the store holds the invented demonstration workshop.</summary>
    public const string Demonstration = "demo";

    /// <summary>The workshop's name, as certificates say it.</summary>
    public const string WorkshopName = "name";
}
