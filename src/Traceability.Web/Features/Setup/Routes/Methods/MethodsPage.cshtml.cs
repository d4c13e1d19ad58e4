using Microsoft.AspNetCore.Authorization;
using Traceability.Domain.Records;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes.Methods;

/// <summary>What a stage can be judged by: every method, as its code describes it.</summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Quality)}")]
public sealed class MethodsPage(Writes writes) : DeskPage(writes)
{
    /// <summary>All of them, by name.</summary>
    public IReadOnlyList<StageMethod> All { get; } = [.. StageMethods.Names.Order(StringComparer.Ordinal).Select(StageMethods.Get)];

    public void OnGet() { }
}
