using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>
/// Where anybody can ask about a certificate; printed on it for good: the address by which the workshop is known outside. Without it, or
/// with one that leads nowhere but to this machine, no certificate is issued; those of the demonstration, which no customer holds, take
/// the address of the request.
/// </summary>
public sealed class VerificationAddress(IHttpContextAccessor accessor)
{
    /// <summary>Why no certificate may be issued here; null when one may.</summary>
    public static Refusal? Problem(WorkshopFacts workshop) =>
        workshop.Demo || PublicAddress.LeadsHereFromOutside(workshop.PublicUrl)
            ? null
            : Refusal.Conflict(
                workshop.PublicUrl is not { } address ? QualitySentences.PublicAddressIsMissing
                    : workshop.Set.PublicUrl is null ? QualitySentences.PublicAddressLeadsNowhere(address)
                    : QualitySentences.SetAddressLeadsNowhere(address, WorkshopOverrides.PublicUrlSetting),
                RefusalCode.PublicAddressMissing
            );

    /// <summary>The address of a certificate's verify page.</summary>
    public string Of(string certificateId, WorkshopFacts workshop)
    {
        var request = accessor.HttpContext?.Request;
        var root =
            workshop.PublicUrl is { } known ? known.TrimEnd('/')
            : request is null ? ""
            : $"{request.Scheme}://{request.Host}{request.PathBase}";
        return $"{root}/verify/{certificateId}";
    }
}
