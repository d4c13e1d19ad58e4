using System.Text.Json;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Station;

/// <summary>A reading corrected long after reaches the later stages of its part, and the parts around it, over HTTP.</summary>
public sealed class CorrectionReachTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Diaphragm = """
        model: REACH-1
        kind: diaphragm
        title: Diaphragm
        serialPrefix: RD
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: tune
            title: Tune
            method: jig-tension
            slots: [{position: film, lotKind: film}]
            characteristics:
              - {name: jigResonanceHz, label: In the jig, unit: Hz}
              - {name: tuneTemperatureC, label: Air, unit: degC}
              - {name: tuneHumidityPct, label: Humidity, unit: pct}
              - {name: tunePressureHpa, label: Pressure, unit: hPa}
              - {name: jigTensionNm, label: Tension, unit: N/m, entered: false}
            parameters: {numbers: {jigRadiusMm: 13, ringRadiusMm: 12.5}}
          - code: ring
            title: On the ring
            method: ring-drift
            characteristics:
              - {name: ringResonanceHz, label: On the ring, unit: Hz}
              - {name: ringTemperatureC, label: Air, unit: degC}
              - {name: ringHumidityPct, label: Humidity, unit: pct}
              - {name: ringPressureHpa, label: Pressure, unit: hPa}
              - {name: driftPct, label: Drift, unit: pct, lower: -3, upper: 2, entered: false}
              - {name: ringTensionNm, label: Tension, unit: N/m, entered: false}
            parameters: {numbers: {jigRadiusMm: 13, ringRadiusMm: 12.5}}
        """;

    private const string Capsule = """
        model: REACH-1
        kind: capsule
        title: Capsule
        serialPrefix: RC
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: capacitance
            title: Capacitance
            method: capacitance
            slots: [{position: diaphragm, partKind: diaphragm}]
            characteristics:
              - {name: capacitancePf, label: Capacitance, unit: pF}
              - {name: pullInV, label: Pull-in, unit: V, entered: false}
              - {name: pullInMargin, label: Margin, unit: ratio, lower: 1.2, entered: false}
            parameters: {numbers: {ringRadiusMm: 12.5, effectiveAreaPct: 80, strayCapacitancePf: 3, polarisingVoltageV: 60}}
        """;

    [Fact]
    public async Task A_corrected_jig_resonance_is_answered_with_what_it_turned_at_the_ring()
    {
        var (serial, jig, _) = await OnRingAsync();

        var corrected = (
            await workshop.PostAsync($"readings/{jig}/corrections", new { value = 1180, reason = "misread" }, Workshop.Quality)
        ).Expect(201);

        var anew = Assert.Single(corrected.List("judgedAnew"));
        Assert.Equal(
            (serial, "ring", "pass", "fail", "correction-turned-verdict"),
            (
                anew.Text("serial"),
                anew.Text("stage"),
                anew.Text("verdictBefore"),
                anew.Text("verdictAfter"),
                anew.Text("nonconformity.code")
            )
        );
        Assert.Equal("nonconforming", await workshop.StateOfAsync(serial));
        await using var health = new HealthCheck(workshop);
        await health.PassAsync();
    }

    [Fact]
    public async Task A_corrected_resonance_on_the_ring_reaches_the_capsule_around_it()
    {
        var (serial, _, ring) = await OnRingAsync();
        var capsule = (await workshop.PostAsync("parts", new { kind = "capsule", model = "REACH-1" })).Expect(201).Text("serial");
        var closed = await RecordAsync(
            capsule,
            "capacitance",
            new { readings = Readings(("capacitancePf", 66)), fittings = new[] { new { position = "diaphragm", child = serial } } }
        );
        var before = closed.List("readings").Single(r => r.Text("characteristic") == "pullInV").Text("value");

        var corrected = (
            await workshop.PostAsync($"readings/{ring}/corrections", new { value = 1140, reason = "misread" }, Workshop.Quality)
        ).Expect(201);

        var anew = Assert.Single(corrected.List("judgedAnew"));
        Assert.Equal((capsule, "capacitance"), (anew.Text("serial"), anew.Text("stage")));
        var told = (await workshop.GetAsync($"parts/{capsule}/history")).Expect(200).List();
        var pullIn = told.Single(e =>
            e.Has("reading") && e.At("reading").ValueKind == JsonValueKind.Object && e.Text("reading.characteristic") == "pullInV"
        );
        Assert.Equal(before, pullIn.Text("reading.value"));
        var correction = Assert.Single(pullIn.List("corrections"));
        Assert.NotEqual(before, correction.Text("value"));
        Assert.Contains(serial, correction.Text("reason"), StringComparison.Ordinal);
        await using var health = new HealthCheck(workshop);
        await health.PassAsync();
    }

    [Fact]
    public async Task A_superseding_value_changed_behind_the_service_is_named()
    {
        var (serial, jig, _) = await OnRingAsync();
        (await workshop.PostAsync($"readings/{jig}/corrections", new { value = 1090, reason = "misread" }, Workshop.Quality)).Expect(201);
        await using var door = BackDoor.Of(workshop);
        await using var health = new HealthCheck(workshop);
        var before = await health.RecomputedAsync();

        var (asked, chosen) = (
            "select c.digits from corrections c",
            $"reading_id = (select r.id from readings r join parts p on p.id = r.part_id where p.serial = '{serial}' and"
                + " r.characteristic = 'driftPct')"
        );
        var digits = await door.AskAsync<string>($"{asked} where {chosen}");

        await door.TamperAsync($"update corrections set digits = '0.11' where {chosen}");
        var after = await health.RecomputedAsync();
        await door.TamperAsync($"update corrections set digits = '{digits}' where {chosen}");

        Assert.Contains("counts as 0.11", Assert.Single(after.Differences.Except(before.Differences)), StringComparison.Ordinal);
    }

    private async Task<(string Serial, Guid Jig, Guid Ring)> OnRingAsync()
    {
        await workshop.RouteOnceAsync("REACH-1", "diaphragm", Diaphragm);
        await workshop.RouteOnceAsync("REACH-1", "capsule", Capsule);

        var serial = (await workshop.PostAsync("parts", new { kind = "diaphragm", model = "REACH-1" })).Expect(201).Text("serial");
        var tuned = await RecordAsync(
            serial,
            "tune",
            new
            {
                readings = Readings(("jigResonanceHz", 1100), ("tuneTemperatureC", 22), ("tuneHumidityPct", 45), ("tunePressureHpa", 1000)),
                fittings = new[] { new { position = "film", lot = Workshop.Film } },
            }
        );
        workshop.Clock.Pass(TimeSpan.FromMinutes(1));
        var onRing = await RecordAsync(
            serial,
            "ring",
            new
            {
                readings = Readings(
                    ("ringResonanceHz", 1158),
                    ("ringTemperatureC", 22),
                    ("ringHumidityPct", 45),
                    ("ringPressureHpa", 1000)
                ),
            }
        );
        workshop.Clock.Pass(TimeSpan.FromMinutes(1));
        return (serial, IdOf(tuned, "jigResonanceHz"), IdOf(onRing, "ringResonanceHz"));
    }

    private async Task<JsonElement> RecordAsync(string serial, string stage, object more)
    {
        var answer = await workshop.RecordAsync(serial, stage, more);
        Assert.Equal("pass", answer.Text("verdict"));
        return answer;
    }

    private static object[] Readings(params (string Characteristic, decimal Value)[] values) =>
        [.. values.Select(v => new { characteristic = v.Characteristic, value = v.Value })];

    private static Guid IdOf(JsonElement recorded, string characteristic) =>
        recorded.List("readings").Single(r => r.Text("characteristic") == characteristic).Id();
}
