namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>
/// Where anybody can ask about a certificate; printed on it for good. <c>TRACEABILITY_PUBLIC_URL</c> is the address by which the
/// workshop is known outside; without it the address of the request that issues the certificate has to do.
/// </summary>
public sealed class VerifyAddress(IConfiguration configuration, IHttpContextAccessor accessor)
{
    public const string Setting = "TRACEABILITY_PUBLIC_URL";

    /// <summary>The address of a certificate's verify page.</summary>
    public string Of(string certificateId)
    {
        var request = accessor.HttpContext?.Request;
        var root = configuration[Setting] is { Length: > 0 } set ? set.TrimEnd('/') : request is null ? "" : $"{request.Scheme}://{request.Host}{request.PathBase}";
        return $"{root}/verify/{certificateId}";
    }
}
