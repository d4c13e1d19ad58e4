using Traceability.SeedScenario.Api;
using Traceability.SeedScenario.Foundation;
using Traceability.SeedScenario.History;

namespace Traceability.SeedScenario;

/// <summary>
/// The invented workshop of the demo, entered over the public contract alone. The store must be empty but for the workshop lead
/// <c>LEAD1</c> with the PIN <c>5555</c>. The same <c>today</c> always gives the same workshop.
/// </summary>
public static class DemoScenario
{
    /// <summary>Everything: the workshop, then its history.</summary>
    /// <param name="client">Talks to the service; its base address is the service's root, ending in a slash.</param>
    /// <param name="today">The workshop's day; everything but today's daily check lies before it.</param>
    /// <param name="progress">Told after every step.</param>
    /// <param name="cancellation">Stops between two requests; what was entered stays.</param>
    public static async Task LoadAsync(HttpClient client, DateOnly today, IProgress<SeedProgress>? progress, CancellationToken cancellation)
    {
        await LoadFoundationAsync(client, today, progress, cancellation);
        await LoadHistoryAsync(client, today, progress, cancellation);
    }

    /// <summary>The texts of the route files; all other files are read with them.</summary>
    public static IEnumerable<string> RouteFiles() => WorkshopFiles.Routes.Select(r => r.Text);

    /// <summary>
    /// People, stations, instruments with calibrations and today's check, routes, lots: enough to start building at once.
    /// </summary>
    public static async Task LoadFoundationAsync(
        HttpClient client,
        DateOnly today,
        IProgress<SeedProgress>? progress,
        CancellationToken cancellation
    )
    {
        using var api = new WorkshopApi(client, WorkshopFiles.Pins);
        await new SetUpWorkshop(api, new ScenarioCalendar(today), progress).RunAsync(cancellation);
    }

    /// <summary>Four months of building, what is in flight, and what happened afterwards; needs the foundation.</summary>
    public static async Task LoadHistoryAsync(
        HttpClient client,
        DateOnly today,
        IProgress<SeedProgress>? progress,
        CancellationToken cancellation
    )
    {
        using var api = new WorkshopApi(client, WorkshopFiles.Pins);
        var routes = await api.GetAsync<ListOf<RouteView>>("LEAD1", "routes", cancellation);
        await new FourMonths(api, new RouteBook(routes.Items), new ScenarioCalendar(today), progress).RunAsync(cancellation);
    }
}
