namespace Traceability.Web.Features.Shared;

/// <summary>Names of what the service notes about its store.</summary>
public static class WorkshopSettings
{
    /// <summary>Present when the store holds the invented demonstration workshop.</summary>
    public const string Demonstration = "demo";
}
