using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Station;

/// <summary>A tester that fails its check after a test puts the readings in doubt, and the attempt says so.</summary>
public sealed class ProofAfterHttpTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Route = """
        model: PROOF-1
        kind: capsule
        title: Capsule
        serialPrefix: PR
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: capacitance
            title: Capacitance
            method: entered-limits
            characteristics:
              - {name: pullInV, label: Pull-in voltage, unit: V}
          - code: insulation
            title: Insulation test
            method: insulation-from-current
            instrumentKinds: [insulation-tester]
            checkedToday: true
            characteristics:
              - {name: testVoltageV, label: Test voltage, unit: V, lower: 40, upper: 110}
              - {name: currentAt15sPicoampere, label: After 15 s, unit: pA}
              - {name: currentAt60sPicoampere, label: After 60 s, unit: pA}
              - {name: electrificationS, label: Voltage on for, unit: s, required: false}
              - {name: insulationAt15sGohm, label: After 15 s, unit: GOhm, lower: 100, entered: false}
              - {name: insulationAt60sGohm, label: After 60 s, unit: GOhm, lower: 100, entered: false}
            parameters: {numbers: {electrificationSeconds: 60, currentFloorPicoampere: 0.5, pullInFactor: 1.25},
                terminals: [{voltage: testVoltageV, tied: [film], against: [backplate]}]}
        """;

    [Fact]
    public async Task The_attempt_says_that_the_check_is_due_then_that_it_failed_and_the_part_is_among_the_affected()
    {
        var (serial, attempt) = await TestedAsync(
            "IT-1",
            ("testVoltageV", 100),
            ("currentAt15sPicoampere", 260),
            ("currentAt60sPicoampere", 250)
        );
        Assert.Equal("pass", (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200).Text("verdict"));
        Assert.Contains("still to be checked", await SaidAsync(attempt), StringComparison.Ordinal);

        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        var failed = (await workshop.PostAsync("instruments/IT-1/checks", new { value = 80 })).Expect(201);

        Assert.Contains("in doubt", failed.Text("because"), StringComparison.Ordinal);
        Assert.Contains("failed its check", await SaidAsync(attempt), StringComparison.Ordinal);
        Assert.Contains(serial, (await workshop.GetAsync("instruments/IT-1/affected")).Expect(200).Texts("items", "serial"));
        var visitor = await Visitor.SignedInAsync(workshop, Workshop.Quality);
        Assert.Contains(
            "IT-1 failed its check against the reference",
            (await visitor.GoAsync($"/parts/{serial}")).Text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_good_check_after_the_test_leaves_nothing_to_say()
    {
        var (_, attempt) = await TestedAsync(
            "IT-2",
            ("testVoltageV", 100),
            ("currentAt15sPicoampere", 260),
            ("currentAt60sPicoampere", 250)
        );
        (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200);
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        (await workshop.PostAsync("instruments/IT-2/checks", new { value = 100 })).Expect(201);

        Assert.Equal("", await SaidAsync(attempt));
    }

    [Theory]
    [InlineData("testVoltageV", 0, "must be above zero")]
    [InlineData("testVoltageV", -100, "must be above zero")]
    [InlineData("currentAt60sPicoampere", -250, "check the sign")]
    [InlineData("electrificationS", 20, "after 20 s with the voltage on, the route asks for 60 s")]
    public async Task Readings_that_say_nothing_are_kept_and_no_verdict_is_invented(string wrong, int value, string words)
    {
        var values = new Dictionary<string, decimal>
        {
            ["testVoltageV"] = 100,
            ["currentAt15sPicoampere"] = 260,
            ["currentAt60sPicoampere"] = 250,
            [wrong] = value,
        };
        var (_, attempt) = await TestedAsync("IT-3", [.. values.Select(v => (v.Key, v.Value))]);

        var problem = (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Problem(409);

        Assert.Contains(words, problem, StringComparison.Ordinal);
        Assert.Contains("what was recorded so far is kept", problem, StringComparison.Ordinal);
        var kept = (await workshop.GetAsync($"attempts/{attempt}")).Expect(200);
        Assert.Equal(("open", values.Count), (kept.Text("state"), kept.List("readings").Count));
    }

    private async Task<(string Serial, Guid Attempt)> TestedAsync(string tester, params (string Name, decimal Value)[] readings)
    {
        await workshop.PostAsync(
            "instruments",
            new
            {
                code = tester,
                kind = "insulation-tester",
                title = "Tester",
                checkNominal = 100,
                checkTolerance = 5,
                checkUnit = "GOhm",
            },
            Workshop.Lead
        );
        await workshop.RouteOnceAsync("PROOF-1", "capsule", Route);
        var today = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime);
        (
            await workshop.PostAsync(
                $"instruments/{tester}/calibrations",
                new
                {
                    calibratedOn = today.AddDays(-10),
                    dueOn = today.AddDays(300),
                    reference = "invented",
                },
                Workshop.Quality
            )
        ).Expect(201);
        (await workshop.PostAsync($"instruments/{tester}/checks", new { value = 100.5 })).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        var serial = (await workshop.PostAsync("parts", new { kind = "capsule", model = "PROOF-1" })).Expect(201).Text("serial");
        (
            await workshop.PostAsync(
                $"parts/{serial}/records",
                new
                {
                    stage = "capacitance",
                    station = "BENCH-1",
                    readings = new[] { new { characteristic = "pullInV", value = 160 } },
                }
            )
        ).Expect(201);
        var attempt = await workshop.OpenAsync(serial, "insulation", "BENCH-1", tester);
        foreach (var (name, value) in readings)
        {
            (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = name, value })).Expect(201);
        }

        return (serial, attempt);
    }

    private async Task<string> SaidAsync(Guid attempt) =>
        string.Join(
            "; ",
            (await workshop.GetAsync($"attempts/{attempt}")).Expect(200).List("instrumentFindings").Select(f => f.GetString())
        );
}
