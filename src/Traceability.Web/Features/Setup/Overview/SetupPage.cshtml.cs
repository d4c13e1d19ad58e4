using Microsoft.AspNetCore.Authorization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Overview;

/// <summary>What the workshop is made of, and what is missing before the first part can be made.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class SetupPage(SetupCounts counts, WorkshopNotice notice, Writes writes) : DeskPage(writes)
{
    public IReadOnlyList<SetupCount> Counts { get; private set; } = [];

    public WorkshopFacts Facts { get; private set; } = null!;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        Facts = await notice.ReadAsync(cancellation);
        Counts = await counts.ReadAsync(cancellation);
    }
}
