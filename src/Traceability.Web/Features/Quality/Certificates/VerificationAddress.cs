using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>
/// Where anybody can ask about a certificate; printed on it for good. <c>TRACEABILITY_PUBLIC_URL</c> is the address by which the workshop
/// is known outside. Without it, or with one that leads nowhere but to this machine, no certificate is issued; those of the demonstration,
/// which no customer holds, take the address of the request.
/// </summary>
public sealed class VerificationAddress(IConfiguration configuration, IHttpContextAccessor accessor)
{
    public const string Setting = "TRACEABILITY_PUBLIC_URL";

    private static readonly string[] Everywhere = ["0.0.0.0", "[::]"];

    /// <summary>Why no certificate may be issued here; null when one may.</summary>
    public Refusal? Problem(WorkshopFacts workshop) =>
        workshop.Demo || LeadsHereFromOutside(configuration[Setting])
            ? null
            : Refusal.Conflict(
                string.IsNullOrWhiteSpace(configuration[Setting])
                    ? QualitySentences.PublicAddressIsMissing(Setting)
                    : QualitySentences.PublicAddressLeadsNowhere(Setting, configuration[Setting]!),
                RefusalCode.PublicAddressMissing
            );

    /// <summary>The address of a certificate's verify page.</summary>
    public string Of(string certificateId)
    {
        var request = accessor.HttpContext?.Request;
        var root =
            configuration[Setting] is { Length: > 0 } set ? set.Trim().TrimEnd('/')
            : request is null ? ""
            : $"{request.Scheme}://{request.Host}{request.PathBase}";
        return $"{root}/verify/{certificateId}";
    }

    private static bool LeadsHereFromOutside(string? address) =>
        Uri.TryCreate(address?.Trim(), UriKind.Absolute, out var uri)
        && (uri.Scheme == Uri.UriSchemeHttps || uri.Scheme == Uri.UriSchemeHttp)
        && !uri.IsLoopback
        && !Everywhere.Contains(uri.Host)
        && uri.Query.Length == 0
        && uri.Fragment.Length == 0;
}
