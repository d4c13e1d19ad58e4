using Traceability.Persistence.Access;
using Traceability.Web.Features.Access;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features;

/// <summary>Who is who: signing in, PINs, the first account.</summary>
public static class AccessContents
{
    public static readonly Contents All = new Contents()
        .With<SignIn>()
        .With<FirstAccount>()
        .NeedingOnce<SlowHashes>()
        .Needing<PinTries>()
        .Needing<PinProof>()
        .Needing<PinSignature>()
        .Needing<SessionCookie>()
        .With<SetPin>();
}
