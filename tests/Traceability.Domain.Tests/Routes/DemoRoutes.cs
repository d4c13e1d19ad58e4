using Traceability.Domain.Routes;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Tests.Routes;

/// <summary>The routes of the demo scenario, linked into this assembly from <c>seed-scenario/routes</c>.</summary>
internal static class DemoRoutes
{
    private const string Prefix = "demo-routes/";

    public static IReadOnlyList<string> FileNames { get; } =
    [
        .. typeof(DemoRoutes)
            .Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .Select(n => n[Prefix.Length..])
            .Order(),
    ];

    public static IReadOnlyList<Route> All { get; } = [.. FileNames.Select(f => Read(f).Route).OfType<Route>()];

    public static RouteReading Read(string fileName)
    {
        using var reader = new StreamReader(typeof(DemoRoutes).Assembly.GetManifestResourceStream(Prefix + fileName)!);
        return RouteText.Read(reader.ReadToEnd(), StageMethods.Requirements);
    }

    public static Route Of(string model, string kind) => All.Single(r => r.Model == model && r.Kind == kind);
}
