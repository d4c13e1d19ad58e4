using System.Text.Json;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality;

/// <summary>
/// What was measured with an instrument before it was found wrong stops fitting, certificate and door until somebody decides on it.
/// </summary>
public sealed class DoubtTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_unit_with_a_diaphragm_from_before_its_bench_failed_a_check_is_neither_certified_nor_shipped_before_a_decision()
    {
        var (unit, diaphragm, bench) = await workshop.BuiltAsync();
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        await workshop.CheckAsync(bench, 950);

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

        Assert.Contains(
            $"{diaphragm} inside it",
            (await workshop.DecideAsync(bench, "accepted", unit)).Problem(409),
            StringComparison.Ordinal
        );
        (await workshop.DecideAsync(bench, "accepted", diaphragm)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { }, Workshop.Quality)).Expect(201);
        Assert.Equal("doubt-decision", (await workshop.GetAsync($"parts/{diaphragm}/history")).Expect(200).List()[^1].Text("what"));
    }

    [Fact]
    public async Task A_finished_unit_in_doubt_is_blocked_on_its_own_page_and_in_every_list_until_that_is_decided()
    {
        var (unit, diaphragm, bench) = await workshop.BuiltAsync();
        Assert.Equal(("stock", "stock"), await StandingAsync(unit));
        await workshop.CheckAsync(bench, 950);

        Assert.Equal(("blocked", "blocked"), await StandingAsync(unit));
        (await workshop.DecideAsync(bench, "accepted", diaphragm)).Expect(201);
        Assert.Equal(("stock", "stock"), await StandingAsync(unit));
    }

    [Fact]
    public async Task A_good_calibration_after_a_failed_one_says_nothing_of_what_was_measured_before()
    {
        var (unit, _, bench) = await workshop.BuiltAsync();
        workshop.Clock.Pass(TimeSpan.FromHours(1));
        await workshop.CalibrateAsync(bench, 0, passed: false);
        await InDoubtAsync($"parts/{unit}/certificates");

        workshop.Clock.Pass(TimeSpan.FromHours(1));
        await workshop.CalibrateAsync(bench, 0, passed: true);
        await InDoubtAsync($"parts/{unit}/certificates");
        Assert.NotEqual(
            "held",
            (await workshop.GetAsync("instruments")).Expect(200).List().Single(i => i.Text("code") == bench).Text("state")
        );
    }

    [Fact]
    public async Task Holding_an_instrument_starts_the_doubt_and_a_good_check_ends_it_once_the_hold_is_lifted()
    {
        var (unit, _, bench) = await workshop.BuiltAsync();
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        var hold = (await workshop.PostAsync("holds", new { instrument = bench, reason = "was dropped" }, Workshop.Quality))
            .Expect(201)
            .Id();
        Assert.Contains("was stopped on", await InDoubtAsync($"parts/{unit}/certificates"), StringComparison.Ordinal);

        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        await workshop.CheckAsync(bench, 900);
        await InDoubtAsync($"parts/{unit}/certificates");
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "found good" }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
    }

    [Fact]
    public async Task A_hold_that_is_lifted_without_a_proof_leaves_the_doubt()
    {
        var (unit, _, bench) = await workshop.BuiltAsync();
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        var hold = (await workshop.PostAsync("holds", new { instrument = bench, reason = "was dropped" }, Workshop.Quality))
            .Expect(201)
            .Id();
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "looks well" }, Workshop.Quality)).Expect(201);

        await InDoubtAsync($"parts/{unit}/certificates");
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        await workshop.CheckAsync(bench, 900);
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
    }

    private async Task<string> InDoubtAsync(string path)
    {
        JsonElement check = (await workshop.PostAsync(path, null, Workshop.Quality))
            .Expect(409)
            .List("checks")
            .Single(c => c.Text("rule") == Doubting.Rule);
        Assert.Equal("False", check.Text("met"));
        return check.Text("because");
    }

    private async Task<(string Own, string Listed)> StandingAsync(string unit) =>
        (
            (await workshop.GetAsync($"parts/{unit}")).Expect(200).Text("standing.code"),
            (await workshop.GetAsync("parts?kind=unit&limit=500"))
                .Expect(200)
                .List()
                .Single(p => p.Text("serial") == unit)
                .Text("standing.code")
        );
}
