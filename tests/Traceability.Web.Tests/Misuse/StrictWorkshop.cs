using System.Text.Json;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Misuse;

/// <summary>
/// The tests' workshop with one more model, whose only stage asks for everything that a stage can ask for: a qualified builder, an
/// instrument in calibration that was checked today, and a lot. All of it invented.
/// </summary>
public sealed class StrictWorkshop : IAsyncLifetime
{
    public const string Stage = "measure",
        Gauge = "GAUGE-1",
        Glue = "glue";

    private const string Route = """
        model: STRICT-1
        kind: capsule
        title: Capsule under strict rules
        serialPrefix: S
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: measure
            title: Measure
            method: entered-limits
            qualification: fine-work
            instrumentKinds: [gauge]
            checkedToday: true
            slots:
              - {position: bond, lotKind: glue}
            characteristics:
              - {name: heightMm, label: Height, unit: mm, lower: 8, upper: 10}
          - code: look
            title: Look over
            method: entered-limits
        """;

    private readonly Dictionary<string, Task<string>> made = [];

    public Workshop Workshop { get; } = new();

    internal BackDoor Door { get; private set; } = null!;

    public async Task InitializeAsync()
    {
        await Workshop.InitializeAsync();
        (
            await Workshop.PostAsync($"people/{Workshop.Builder}/qualifications", new { code = "fine-work", given = true }, Workshop.Lead)
        ).Expect(200);
        await GaugeAsync(Gauge);
        await CalibrateAsync(Gauge, 300);
        await CheckAsync(Gauge, 10);
        await WorkshopSetUp.LotAsync(Workshop, "GLUE-1", Glue);
        await Workshop.RouteAsync(Route);
        Door = BackDoor.Of(Workshop);
    }

    public async Task DisposeAsync()
    {
        await Door.DisposeAsync();
        await Workshop.DisposeAsync();
    }

    /// <summary>Something that the tests of a class make once and share.</summary>
    public Task<string> OnceAsync(string what, Func<Task<string>> make) =>
        made.TryGetValue(what, out var done) ? done : made[what] = make();

    public async Task<string> RegisterAsync() =>
        (await Workshop.PostAsync("parts", new { kind = "capsule", model = "STRICT-1" })).Expect(201).Text("serial");

    public async Task GaugeAsync(string code) =>
        (
            await Workshop.PostAsync(
                "instruments",
                new
                {
                    code,
                    kind = "gauge",
                    title = "Gauge",
                    checkNominal = 10,
                    checkTolerance = 0.1,
                    checkUnit = "mm",
                },
                Workshop.Lead
            )
        ).Expect(201);

    public async Task CalibrateAsync(string code, int daysLeft, bool passed = true)
    {
        var today = DateOnly.FromDateTime(Workshop.Clock.GetUtcNow().UtcDateTime);
        var calibration = new
        {
            calibratedOn = today.AddDays(-60),
            dueOn = today.AddDays(daysLeft),
            reference = "R",
            passed,
        };
        (await Workshop.PostAsync($"instruments/{code}/calibrations", calibration, Workshop.Quality)).Expect(201);
    }

    public async Task CheckAsync(string code, decimal value) =>
        (await Workshop.PostAsync($"instruments/{code}/checks", new { value })).Expect(201);

    /// <summary>One record of the strict stage, whole but for what a test says otherwise.</summary>
    public Task<Reply> RecordAsync(
        string serial,
        string badge = Workshop.Builder,
        string[]? instruments = null,
        string lot = "GLUE-1",
        object? value = null,
        string stage = Stage
    ) =>
        Workshop.PostAsync(
            $"parts/{serial}/records",
            new
            {
                stage,
                station = "BENCH-1",
                instruments = instruments ?? [Gauge],
                readings = new[] { new { characteristic = "heightMm", value = value ?? 9 } },
                fittings = new[] { new { position = "bond", lot } },
            },
            badge
        );

    /// <summary>A command that must be refused with this status and these words, and leave nothing behind.</summary>
    public async Task<JsonElement> RefusedAsync(int status, string words, Func<Task<Reply>> command)
    {
        Reply? reply = null;
        await Door.UntouchedByAsync(async () => reply = await command());
        Assert.Contains(words, reply!.Problem(status), StringComparison.Ordinal);
        Assert.True(reply.Json.Has("requestId"), "a problem names its request");
        return reply.Json;
    }

    /// <summary>Refused by this rule of the gate.</summary>
    public async Task ClosedByAsync(string rule, string words, Func<Task<Reply>> command)
    {
        var problem = await RefusedAsync(409, words, command);
        Assert.Contains(rule, problem.List("checks").Where(c => c.Text("met") == "False").Select(c => c.Text("rule")));
    }
}
