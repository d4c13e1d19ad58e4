using Traceability.SeedScenario.Api;

namespace Traceability.SeedScenario.History;

/// <summary>The insulation tester, proved against its reference resistor in the morning of a day and again after its tests.</summary>
internal sealed class DailyChecks(WorkshopApi api, StepCounter steps)
{
    private const string FormerBuilder = "HIST1";
    private const string Path = "instruments/INS-01/checks";

    public Task OnAsync(IEnumerable<DateOnly> days, CancellationToken cancellation) =>
        Task.WhenAll(days.Select(d => OnAsync(d, cancellation)));

    /// <summary>Today's check carries the server's own clock, so that it falls on today wherever the workshop is.</summary>
    public async Task NowAsync(CancellationToken cancellation)
    {
        await api.PostAsync("LEAD1", Path, new { value = 100.2m }, cancellation);
        steps.Step("daily checks");
    }

    private async Task OnAsync(DateOnly day, CancellationToken cancellation)
    {
        foreach (var minute in new[] { 6 * 60 + 30, 17 * 60 + 50 })
        {
            var value = 100m + Math.Round((decimal)new Chance($"check {day:O} {minute}").Near(0, 1), 1);
            await api.PostAsync(
                FormerBuilder,
                Path,
                new { value, occurredAt = ScenarioCalendar.Midnight(day).AddMinutes(minute) },
                cancellation
            );
        }

        steps.Step("daily checks");
    }
}
