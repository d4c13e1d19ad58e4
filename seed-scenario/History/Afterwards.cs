using System.Text.Json;
using Traceability.SeedScenario.Api;

namespace Traceability.SeedScenario.History;

/// <summary>
/// What came to light afterwards: units that came back, the meter that drifted, the lots that turned out bad. Stops come last, for they
/// stop.
/// </summary>
internal sealed class Afterwards(WorkshopApi api, Bench bench, UnitWork units, ScenarioCalendar calendar, StepCounter steps)
{
    /// <summary>Steps for the progress.</summary>
    public const int Steps = 4;

    private const string Quality = "HIST5";
    private const string Service = "HIST5";
    private const int Week = ScenarioCalendar.LastWeek;

    public async Task RunAsync(IReadOnlyList<Unit> built, Capsule replacement, CancellationToken cancellation)
    {
        await LeakyCapsuleAsync(built.Single(u => u.Serial == "UD-0014"), replacement, cancellation);
        steps.Step("returns");
        await SilentSwitchAsync(built.Single(u => u.Serial == "US-0004"), cancellation);
        steps.Step("returns");
        await RustleAsync(built.Single(u => u.Serial == "US-0015"), cancellation);
        steps.Step("returns");
        await StopAsync(cancellation);
        steps.Step("stops");
    }

    /// <summary>Crackles in a humid room: the capsule of the leaky film is replaced.</summary>
    private async Task LeakyCapsuleAsync(Unit u, Capsule replacement, CancellationToken cancellation)
    {
        var back = await TakeBackAsync(
            u,
            "crackles and drops in level after an hour in a humid hall",
            calendar.At(14, 1, 9 * 60),
            cancellation
        );
        await FindAsync(
            back,
            "low-insulation",
            "insulation of the capsule 22 GOhm at 45 V in humid air; dry again 180 GOhm",
            calendar.At(14, 2, 10 * 60),
            cancellation
        );
        await RemoveAsync(u, "capsule", "leaks in humid air", calendar.At(Week, 0, 8 * 60), cancellation);
        await ScrapAsync(u.Capsule!, calendar.At(Week, 0, 8 * 60 + 20), cancellation);
        await bench.DoAsync(
            u,
            "capsule-in",
            calendar.At(Week, 0, 9 * 60),
            cancellation,
            new()
            {
                Children = new Dictionary<string, string> { ["capsule"] = replacement.Serial },
                Note = "replacement after a return",
            }
        );
        await units.FinishAsync(u, calendar.At(Week, 0, 10 * 60), cancellation, again: true);
        await SendBackAsync(
            u,
            back,
            "capsule replaced, all stages after it done again, new certificate",
            calendar.At(Week, 1, 9 * 60),
            cancellation
        );
    }

    /// <summary>Falls silent when tapped: the pad switch is replaced.</summary>
    private async Task SilentSwitchAsync(Unit u, CancellationToken cancellation)
    {
        var back = await TakeBackAsync(u, "falls silent now and then, comes back when tapped", calendar.At(13, 3, 11 * 60), cancellation);
        await FindAsync(back, "bad-contact", "pad switch: contact opens when moved sideways", calendar.At(13, 4, 9 * 60), cancellation);
        await RemoveAsync(u, "pad-switch", "contact opens when moved", calendar.At(15, 1, 8 * 60), cancellation);
        await bench.DoAsync(
            u,
            "switches-inner",
            calendar.At(15, 1, 9 * 60),
            cancellation,
            new() { OnlySlot = "pad-switch", Note = "new pad switch after a return" }
        );
        await bench.DoAsync(u, "body", calendar.At(15, 1, 9 * 60 + 20), cancellation, new() { SlotsAreFilled = true });
        await bench.DoAsync(u, "capsule-in", calendar.At(15, 1, 9 * 60 + 40), cancellation, new() { SlotsAreFilled = true });
        await units.FinishAsync(u, calendar.At(15, 1, 10 * 60), cancellation, again: true);
        await SendBackAsync(u, back, "pad switch replaced, new certificate", calendar.At(15, 2, 9 * 60), cancellation);
    }

    /// <summary>Came back on the last Thursday and is still being looked at.</summary>
    private async Task RustleAsync(Unit u, CancellationToken cancellation)
    {
        var back = await TakeBackAsync(u, "rustles on warm, humid days", calendar.At(Week, 3, 10 * 60), cancellation);
        await FindAsync(
            back,
            "low-insulation",
            "insulation falls with humidity; film lot under suspicion, see UD-0014",
            calendar.At(Week, 4, 9 * 60),
            cancellation
        );
    }

    private async Task StopAsync(CancellationToken cancellation)
    {
        var found = calendar.MondayOf(Week).AddDays(-3);
        await api.PostAsync(
            "LEAD1",
            $"instruments/{Stories.DriftedMeter}/calibrations",
            new
            {
                calibratedOn = calendar.MondayOf(8),
                dueOn = calendar.MondayOf(8).AddYears(1),
                reference = "invented certificate IC-0352",
                passed = true,
            },
            cancellation
        );
        await api.PostAsync(
            "LEAD1",
            $"instruments/{Stories.DriftedMeter}/calibrations",
            new
            {
                calibratedOn = found,
                dueOn = found.AddYears(1),
                reference = "invented certificate IC-0371",
                passed = false,
                note = "shows 2.5 pF too much at 70 pF",
            },
            cancellation
        );
        await HoldAsync(
            new
            {
                instrument = Stories.DriftedMeter,
                reason = "drifted out of tolerance; everything since its last good calibration is looked through",
                occurredAt = calendar.At(Week - 1, 4, 16 * 60),
            },
            cancellation
        );
        await HoldAsync(
            new
            {
                part = Stories.HeldUnit,
                reason = "customer asked to wait for the second of the pair",
                occurredAt = calendar.At(Week, 1, 15 * 60),
            },
            cancellation
        );
        await QuarantineAsync(
            Stories.BadAdhesive,
            "bonds slip: resonance on the ring 4 to 6 % low",
            calendar.At(11, 2, 8 * 60),
            cancellation
        );
        await QuarantineAsync(
            Stories.BadFilm,
            "capsules fail insulation after the humid soak; two units back with crackles",
            calendar.At(Week, 4, 15 * 60),
            cancellation
        );
    }

    private async Task<string> TakeBackAsync(Unit u, string complaint, DateTimeOffset at, CancellationToken cancellation) => (
            await api.PostAsync(
                Service,
                "returns",
                new
                {
                    u.Serial,
                    complaint,
                    occurredAt = at,
                },
                cancellation
            )
        ).GetProperty("id").GetString()!;

    private Task FindAsync(string back, string code, string description, DateTimeOffset at, CancellationToken cancellation) =>
        api.PostAsync(
            Service,
            $"returns/{back}/findings",
            new
            {
                code,
                description,
                occurredAt = at,
            },
            cancellation
        );

    private Task RemoveAsync(Unit u, string position, string reason, DateTimeOffset at, CancellationToken cancellation) =>
        api.PostAsync(
            Service,
            $"parts/{u.Serial}/removals",
            new
            {
                position,
                reason,
                occurredAt = at,
            },
            cancellation
        );

    private async Task ScrapAsync(Capsule c, DateTimeOffset at, CancellationToken cancellation)
    {
        var raised = await api.PostAsync(
            Quality,
            $"parts/{c.Serial}/nonconformities",
            new
            {
                code = "low-insulation",
                description = "22 GOhm in humid air, found on a returned unit",
                occurredAt = at,
            },
            cancellation
        );
        await bench.DecideAsync(
            new Outcome(false, Id(raised), new Dictionary<string, string>()),
            "scrap",
            "film cannot be cleaned further",
            at.AddMinutes(10),
            cancellation
        );
    }

    private async Task SendBackAsync(Unit u, string back, string action, DateTimeOffset at, CancellationToken cancellation)
    {
        await api.PostAsync(
            Service,
            $"returns/{back}/outcome",
            new
            {
                kind = "repaired",
                reason = action,
                occurredAt = at.AddMinutes(-10),
            },
            cancellation
        );
        await bench.CertifyAsync(u, at, cancellation);
        await api.PostAsync(Service, $"returns/{back}/close", new { action, occurredAt = at.AddMinutes(10) }, cancellation);
        await bench.ShipAsync(u, at.AddMinutes(60), cancellation);
    }

    private Task HoldAsync(object hold, CancellationToken cancellation) => api.PostAsync(Quality, "holds", hold, cancellation);

    private Task QuarantineAsync(string lot, string reason, DateTimeOffset at, CancellationToken cancellation) =>
        api.PostAsync(Quality, $"lots/{lot}/quarantine", new { reason, occurredAt = at }, cancellation);

    private static string Id(JsonElement answer) => answer.GetProperty("id").GetString()!;
}
