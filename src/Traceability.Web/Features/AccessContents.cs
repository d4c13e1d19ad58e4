using Traceability.Persistence.Access;
using Traceability.Web.Features.Access;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features;

/// <summary>Who is who: signing in and out, PINs.</summary>
public static class AccessContents
{
    public static readonly Contents All = new Contents()
        .With<SignIn>()
        .With<SignOut>()
        .With<SetPin>()
        .Needing<Recovery>()
        .Needing<FirstAccountKey>()
        .Needing<PinRules>()
        .NeedingOnce<PinHashLimiter>()
        .Needing<PinTries>()
        .Needing<PinProof>()
        .Needing<PinSignature>()
        .Needing<SessionCookie>();
}
