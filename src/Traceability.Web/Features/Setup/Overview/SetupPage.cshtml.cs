using Microsoft.AspNetCore.Authorization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Overview;

/// <summary>What the workshop is made of, what is done of it and what comes next until the first part is scanned.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class SetupPage(FirstHour firstHour, WorkshopNotice notice, Writes writes) : DeskPage(writes)
{
    public IReadOnlyList<SetupStep> Steps { get; private set; } = [];

    /// <summary>The step to take now; null when the first part was scanned.</summary>
    public SetupStep? Next => Steps.FirstOrDefault(s => !s.Done);

    public WorkshopFacts Facts { get; private set; } = null!;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        Facts = await notice.ReadAsync(cancellation);
        Steps = await firstHour.ReadAsync(cancellation);
    }
}
