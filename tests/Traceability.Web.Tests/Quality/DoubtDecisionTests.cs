using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality;

/// <summary>What the quality lead decides on parts measured with an instrument in doubt, and what follows from it.</summary>
public sealed class DoubtDecisionTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task What_is_to_be_measured_again_is_done_again_from_that_stage_and_is_then_in_doubt_no_more()
    {
        var (diaphragm, bench) = await workshop.MeasuredAsync();
        await workshop.CheckAsync(bench, 950);
        (await workshop.DecideAsync(bench, "remeasure", diaphragm)).Expect(201);
        Assert.Equal("verify", (await workshop.GetAsync($"parts/{diaphragm}")).Expect(200).Text("stage"));

        var good = await workshop.BenchAsync();
        await workshop.RecordAsync(
            diaphragm,
            "verify",
            new { instruments = new[] { good }, readings = new[] { new { characteristic = "ringHz", value = 901 } } }
        );
        await workshop.CapsuleAsync(diaphragm);
        Assert.Contains(
            "nothing that counts was measured on it",
            (await workshop.DecideAsync(bench, "accepted", diaphragm)).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_part_measured_in_doubt_is_not_fitted_and_one_that_is_fitted_is_taken_out_before_it_is_measured_again()
    {
        var (diaphragm, bench) = await workshop.MeasuredAsync();
        var (_, fitted, other) = await workshop.BuiltAsync();
        await workshop.CheckAsync(bench, 950);
        await workshop.CheckAsync(other, 950);

        var capsule = await workshop.RegisterAsync("capsule");
        var attempt = await workshop.OpenAsync(capsule, "stack");
        var refused = (await workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "front", child = diaphragm })).Expect(409);
        Assert.Contains(
            diaphragm,
            refused.List("checks").Single(c => c.Text("rule") == Doubting.Rule).Text("because"),
            StringComparison.Ordinal
        );
        Assert.Contains("take it out", (await workshop.DecideAsync(other, "remeasure", fitted)).Problem(409), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Held_puts_the_part_on_hold_and_when_that_is_lifted_the_doubt_is_still_there()
    {
        var (unit, diaphragm, bench) = await workshop.BuiltAsync();
        await workshop.CheckAsync(bench, 950);
        (await workshop.DecideAsync(bench, "held", diaphragm)).Expect(201);

        Assert.Equal(["holds", Doubting.Rule], await UnmetAsync($"parts/{unit}/certificates"));
        var hold = (await workshop.GetAsync("holds?open=true&limit=500"))
            .Expect(200)
            .List()
            .Single(h => h.Has("part") && h.Text("part") == diaphragm)
            .Id();
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "looked at" }, Workshop.Quality)).Expect(201);
        Assert.Equal([Doubting.Rule], await UnmetAsync($"parts/{unit}/certificates"));
    }

    [Fact]
    public async Task A_decision_is_signed_reasoned_and_taken_by_the_quality_lead_on_parts_that_are_in_doubt_all_or_none()
    {
        var (diaphragm, bench) = await workshop.MeasuredAsync();
        var (second, _) = await workshop.MeasuredAsync();
        await workshop.CheckAsync(bench, 950);

        (await workshop.DecideAsAsync(bench, "accepted", [diaphragm], badge: Workshop.Builder)).Expect(403);
        (await workshop.DecideAsAsync(bench, "accepted", [diaphragm], pin: "9999")).Expect(403);
        (await workshop.DecideAsAsync(bench, "accepted", [diaphragm], reason: " ")).Expect(400);
        (await workshop.DecideAsync(bench, "forgotten", diaphragm)).Expect(400);
        (await workshop.DecideAsync(bench, "accepted")).Expect(400);
        (await workshop.DecideAsync(bench, "accepted", "NOBODY")).Expect(400);
        (await workshop.DecideAsync("NOTHING", "accepted", diaphragm)).Expect(404);
        Assert.Contains(second, (await workshop.DecideAsync(bench, "accepted", diaphragm, second)).Problem(409), StringComparison.Ordinal);
        (await workshop.DecideAsync(bench, "accepted", diaphragm)).Expect(201);
    }

    [Fact]
    public async Task A_failure_found_after_the_decision_on_an_earlier_one_is_a_doubt_of_its_own()
    {
        var (diaphragm, bench) = await workshop.MeasuredAsync();
        (await workshop.PostAsync("holds", new { instrument = bench, reason = "was dropped" }, Workshop.Quality)).Expect(201);
        (await workshop.DecideAsync(bench, "accepted", diaphragm)).Expect(201);
        Assert.Contains(
            "decided on already",
            (await workshop.DecideAsync(bench, "accepted", diaphragm)).Problem(409),
            StringComparison.Ordinal
        );

        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        await workshop.CheckAsync(bench, 950);
        (await workshop.DecideAsync(bench, "accepted", diaphragm)).Expect(201);
    }

    [Fact]
    public async Task The_page_of_what_was_measured_in_doubt_lists_it_and_takes_the_decision()
    {
        var (diaphragm, bench) = await workshop.MeasuredAsync();
        await workshop.CheckAsync(bench, 950);
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);

        var page = (await desk.GetAsync($"/instruments/{bench}/affected")).Expect(200);
        Assert.Contains(diaphragm, page.Words, StringComparison.Ordinal);
        Assert.Contains("it failed its check", page.Words, StringComparison.Ordinal);
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

    private async Task<string[]> UnmetAsync(string path) =>
        [
            .. (await workshop.PostAsync(path, null, Workshop.Quality))
                .Expect(409)
                .List("checks")
                .Where(c => c.Text("met") == "False")
                .Select(c => c.Text("rule")),
        ];
}
