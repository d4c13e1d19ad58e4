using System.Text.Json;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality;

/// <summary>
/// What was measured with an instrument before it was found wrong stops fitting, certificate and door until somebody decides on it.
/// </summary>
public sealed class DoubtTests(Workshop workshop) : IClassFixture<Workshop>
{
    private async Task<(string Own, string Listed)> StandingAsync(string unit) =>
        (
            (await workshop.GetAsync($"parts/{unit}")).Expect(200).Text("standing.code"),
            (await workshop.GetAsync("parts?kind=unit&limit=500"))
                .Expect(200)
                .List()
                .Single(p => p.Text("serial") == unit)
                .Text("standing.code")
        );

    private const string Rule = "instrument-in-doubt";
    private static int benches;

    [Fact]
    public async Task A_unit_with_a_diaphragm_from_before_its_bench_failed_a_check_is_neither_certified_nor_shipped_before_a_decision()
    {
        var (unit, diaphragm, bench) = await BuiltAsync();
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        await CheckAsync(bench, 950);

        Assert.Contains(
            $"{diaphragm}: Resonance on the ring was measured with {bench}, which failed its check",
            await InDoubtAsync($"parts/{unit}/shipments"),
            StringComparison.Ordinal
        );
        await InDoubtAsync($"parts/{unit}/certificates");
        Assert.Contains(
            bench,
            (await (await Visitor.SignedInAsync(workshop, Workshop.Quality)).GoAsync($"/parts/{unit}")).Text,
            StringComparison.Ordinal
        );

        Assert.Contains($"{diaphragm} inside it", (await DecideAsync(bench, "accepted", unit)).Problem(409), StringComparison.Ordinal);
        (await DecideAsync(bench, "accepted", diaphragm)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { }, Workshop.Quality)).Expect(201);
        Assert.Equal("doubt-decision", (await workshop.GetAsync($"parts/{diaphragm}/history")).Expect(200).List()[^1].Text("what"));
    }

    [Fact]
    public async Task A_finished_unit_in_doubt_is_blocked_on_its_own_page_and_in_every_list_until_that_is_decided()
    {
        var (unit, diaphragm, bench) = await BuiltAsync();
        Assert.Equal(("stock", "stock"), await StandingAsync(unit));
        await CheckAsync(bench, 950);

        Assert.Equal(("blocked", "blocked"), await StandingAsync(unit));
        (await DecideAsync(bench, "accepted", diaphragm)).Expect(201);
        Assert.Equal(("stock", "stock"), await StandingAsync(unit));
    }

    [Fact]
    public async Task A_good_calibration_after_a_failed_one_says_nothing_of_what_was_measured_before()
    {
        var (unit, _, bench) = await BuiltAsync();
        workshop.Clock.Pass(TimeSpan.FromHours(1));
        await CalibrateAsync(bench, 0, passed: false);
        await InDoubtAsync($"parts/{unit}/certificates");

        workshop.Clock.Pass(TimeSpan.FromHours(1));
        await CalibrateAsync(bench, 0, passed: true);
        await InDoubtAsync($"parts/{unit}/certificates");
        Assert.NotEqual(
            "held",
            (await workshop.GetAsync("instruments")).Expect(200).List().Single(i => i.Text("code") == bench).Text("state")
        );
    }

    [Fact]
    public async Task Holding_an_instrument_starts_the_doubt_and_a_good_check_ends_it_once_the_hold_is_lifted()
    {
        var (unit, _, bench) = await BuiltAsync();
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        var hold = (await workshop.PostAsync("holds", new { instrument = bench, reason = "was dropped" }, Workshop.Quality))
            .Expect(201)
            .Id();
        Assert.Contains("was stopped on", await InDoubtAsync($"parts/{unit}/certificates"), StringComparison.Ordinal);

        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        await CheckAsync(bench, 900);
        await InDoubtAsync($"parts/{unit}/certificates");
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "found good" }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
    }

    [Fact]
    public async Task A_hold_that_is_lifted_without_a_proof_leaves_the_doubt()
    {
        var (unit, _, bench) = await BuiltAsync();
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        var hold = (await workshop.PostAsync("holds", new { instrument = bench, reason = "was dropped" }, Workshop.Quality))
            .Expect(201)
            .Id();
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "looks well" }, Workshop.Quality)).Expect(201);

        await InDoubtAsync($"parts/{unit}/certificates");
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        await CheckAsync(bench, 900);
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
    }

    [Fact]
    public async Task What_is_to_be_measured_again_is_done_again_from_that_stage_and_is_then_in_doubt_no_more()
    {
        var (diaphragm, bench) = await MeasuredAsync();
        await CheckAsync(bench, 950);
        (await DecideAsync(bench, "remeasure", diaphragm)).Expect(201);
        Assert.Equal("verify", (await workshop.GetAsync($"parts/{diaphragm}")).Expect(200).Text("stage"));

        var good = await BenchAsync();
        await workshop.RecordAsync(
            diaphragm,
            "verify",
            new { instruments = new[] { good }, readings = new[] { new { characteristic = "ringHz", value = 901 } } }
        );
        await workshop.CapsuleAsync(diaphragm);
        Assert.Contains(
            "nothing that counts was measured on it",
            (await DecideAsync(bench, "accepted", diaphragm)).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_part_measured_in_doubt_is_not_fitted_and_one_that_is_fitted_is_taken_out_before_it_is_measured_again()
    {
        var (diaphragm, bench) = await MeasuredAsync();
        var (_, fitted, other) = await BuiltAsync();
        await CheckAsync(bench, 950);
        await CheckAsync(other, 950);

        var capsule = await workshop.RegisterAsync("capsule");
        var attempt = await workshop.OpenAsync(capsule, "stack");
        var refused = (await workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "front", child = diaphragm })).Expect(409);
        Assert.Contains(diaphragm, refused.List("checks").Single(c => c.Text("rule") == Rule).Text("because"), StringComparison.Ordinal);
        Assert.Contains("take it out", (await DecideAsync(other, "remeasure", fitted)).Problem(409), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Held_puts_the_part_on_hold_and_when_that_is_lifted_the_doubt_is_still_there()
    {
        var (unit, diaphragm, bench) = await BuiltAsync();
        await CheckAsync(bench, 950);
        (await DecideAsync(bench, "held", diaphragm)).Expect(201);

        Assert.Equal(["holds", Rule], await UnmetAsync($"parts/{unit}/certificates"));
        var hold = (await workshop.GetAsync("holds?open=true&limit=500"))
            .Expect(200)
            .List()
            .Single(h => h.Has("part") && h.Text("part") == diaphragm)
            .Id();
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "looked at" }, Workshop.Quality)).Expect(201);
        Assert.Equal([Rule], await UnmetAsync($"parts/{unit}/certificates"));
    }

    [Fact]
    public async Task A_decision_is_signed_reasoned_and_taken_by_the_quality_lead_on_parts_that_are_in_doubt_all_or_none()
    {
        var (diaphragm, bench) = await MeasuredAsync();
        var (second, _) = await MeasuredAsync();
        await CheckAsync(bench, 950);

        (await DecideAsAsync(bench, "accepted", [diaphragm], badge: Workshop.Builder)).Expect(403);
        (await DecideAsAsync(bench, "accepted", [diaphragm], pin: "9999")).Expect(403);
        (await DecideAsAsync(bench, "accepted", [diaphragm], reason: " ")).Expect(400);
        (await DecideAsync(bench, "forgotten", diaphragm)).Expect(400);
        (await DecideAsync(bench, "accepted")).Expect(400);
        (await DecideAsync(bench, "accepted", "NOBODY")).Expect(400);
        (await DecideAsync("NOTHING", "accepted", diaphragm)).Expect(404);
        Assert.Contains(second, (await DecideAsync(bench, "accepted", diaphragm, second)).Problem(409), StringComparison.Ordinal);
        (await DecideAsync(bench, "accepted", diaphragm)).Expect(201);
    }

    [Fact]
    public async Task A_failure_found_after_the_decision_on_an_earlier_one_is_a_doubt_of_its_own()
    {
        var (diaphragm, bench) = await MeasuredAsync();
        (await workshop.PostAsync("holds", new { instrument = bench, reason = "was dropped" }, Workshop.Quality)).Expect(201);
        (await DecideAsync(bench, "accepted", diaphragm)).Expect(201);
        Assert.Contains("decided on already", (await DecideAsync(bench, "accepted", diaphragm)).Problem(409), StringComparison.Ordinal);

        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        await CheckAsync(bench, 950);
        (await DecideAsync(bench, "accepted", diaphragm)).Expect(201);
    }

    [Fact]
    public async Task The_page_of_what_was_measured_in_doubt_lists_it_and_takes_the_decision()
    {
        var (diaphragm, bench) = await MeasuredAsync();
        await CheckAsync(bench, 950);
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);

        var page = (await desk.GetAsync($"/instruments/{bench}/affected")).Expect(200);
        Assert.Contains(diaphragm, page.Words, StringComparison.Ordinal);
        Assert.Contains($"{bench} failed its check", page.Words, StringComparison.Ordinal);
        var done = (
            await desk.SendAsync(
                page,
                "decide",
                ("parts", diaphragm),
                ("kind", "accepted"),
                ("reason", "the error is a tenth of the limit"),
                ("_Pin", Workshop.PinOf(Workshop.Quality))
            )
        ).Expect(200);
        Assert.Contains("the error is a tenth of the limit", done.Words, StringComparison.Ordinal);
        await workshop.CapsuleAsync(diaphragm);
    }

    private async Task<(string Unit, string Diaphragm, string Bench)> BuiltAsync()
    {
        var (diaphragm, bench) = await MeasuredAsync();
        return (await workshop.UnitAsync(await workshop.CapsuleAsync(diaphragm)), diaphragm, bench);
    }

    /// <summary>A finished diaphragm, and the bench on which its resonance was measured.</summary>
    private async Task<(string Diaphragm, string Bench)> MeasuredAsync()
    {
        var (diaphragm, bench) = (await workshop.MountAsync(), await BenchAsync());
        await workshop.CureAsync(diaphragm);
        await CheckAsync(bench, 900.5m);
        await workshop.RecordAsync(
            diaphragm,
            "verify",
            new { instruments = new[] { bench }, readings = new[] { new { characteristic = "ringHz", value = 900 } } }
        );
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        return (diaphragm, bench);
    }

    private async Task<string> BenchAsync()
    {
        var code = $"RB-D{Interlocked.Increment(ref benches)}";
        (
            await workshop.PostAsync(
                "instruments",
                new
                {
                    code,
                    kind = "resonance-bench",
                    title = "Bench",
                    checkNominal = 900,
                    checkTolerance = 2,
                    checkUnit = "Hz",
                },
                Workshop.Lead
            )
        ).Expect(201);
        await CalibrateAsync(code, 10, passed: true);
        return code;
    }

    private async Task CalibrateAsync(string code, int daysAgo, bool passed)
    {
        var on = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime).AddDays(-daysAgo);
        (
            await workshop.PostAsync(
                $"instruments/{code}/calibrations",
                new
                {
                    calibratedOn = on,
                    dueOn = on.AddDays(300),
                    reference = "invented",
                    passed,
                },
                Workshop.Quality
            )
        ).Expect(201);
    }

    private async Task CheckAsync(string code, decimal value) =>
        (await workshop.PostAsync($"instruments/{code}/checks", new { value })).Expect(201);

    private Task<Reply> DecideAsync(string bench, string kind, params string[] parts) => DecideAsAsync(bench, kind, parts);

    private Task<Reply> DecideAsAsync(
        string bench,
        string kind,
        string[] parts,
        string reason = "looked at it",
        string badge = Workshop.Quality,
        string? pin = null
    ) =>
        workshop.PostAsync(
            $"instruments/{bench}/affected/decisions",
            new
            {
                parts,
                kind,
                reason,
                pin = pin ?? Workshop.PinOf(badge),
            },
            badge
        );

    private async Task<string[]> UnmetAsync(string path) =>
        [
            .. (await workshop.PostAsync(path, null, Workshop.Quality))
                .Expect(409)
                .List("checks")
                .Where(c => c.Text("met") == "False")
                .Select(c => c.Text("rule")),
        ];

    private async Task<string> InDoubtAsync(string path)
    {
        JsonElement check = (await workshop.PostAsync(path, null, Workshop.Quality))
            .Expect(409)
            .List("checks")
            .Single(c => c.Text("rule") == Rule);
        Assert.Equal("False", check.Text("met"));
        return check.Text("because");
    }
}
