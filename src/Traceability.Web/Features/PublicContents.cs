using Traceability.Web.Features.Public.Docs;
using Traceability.Web.Features.Public.Verify;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features;

/// <summary>What anybody may see without signing in.</summary>
public static class PublicContents
{
    public static readonly Contents All = new Contents().With<VerifyCertificate>().With<VerifyFile>().Needing<ApiGuide>();
}
