namespace Traceability.Web.Http;

/// <summary>The first part of addresses that rules go by.</summary>
public static class Addresses
{
    /// <summary>What programs ask.</summary>
    public const string Api = "/api";

    /// <summary>What those ask who watch over the service.</summary>
    public const string Health = "/health";

    /// <summary>The description of the interface.</summary>
    public const string Description = "/openapi";
}
