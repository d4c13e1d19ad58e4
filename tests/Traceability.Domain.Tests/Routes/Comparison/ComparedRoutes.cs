using Traceability.Domain.Routes;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Tests.Routes.Comparison;

/// <summary>Routes read from a file or made of stages.</summary>
internal static class ComparedRoutes
{
    public static Route Read(string text) =>
        RouteText.Read(text, StageMethods.Requirements) switch
        {
            { Route: { } route } => route,
            var bad => throw new InvalidOperationException(string.Join("; ", bad.Problems)),
        };

    public static Route RouteOf(IReadOnlyList<Stage> stages) =>
        new("M-1", "capsule", 1, "Capsule", "C", "P1", "P2", new(2026, 1, 31), stages, "", "");
}
