namespace Traceability.Web.Tests.Quality;

public sealed class NonconformityTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_raised_nonconformity_stops_the_part_until_it_is_decided_on()
    {
        var serial = await workshop.MountAsync();
        var raised = await RaiseAsync(serial);
        Assert.Equal("nonconforming", await workshop.StateOfAsync(serial));
        var listed = (await workshop.GetAsync("nonconformities?open=true")).Expect(200).List().Single(n => n.Id() == raised);
        Assert.Equal((serial, "scratched-film", "Bea Builder"), (listed.Text("serial"), listed.Text("code"), listed.Text("raisedBy.name")));

        var decided = (
            await DecideAsync(
                raised,
                new
                {
                    kind = "rework",
                    returnTo = "mount",
                    reason = "mount a new film",
                    pin = Workshop.PinOf(Workshop.Quality),
                }
            )
        ).Expect(201);
        Assert.Equal(("ready", "mount"), (decided.Text("part.state"), decided.Text("part.stage")));
        Assert.Contains(
            "decided already",
            (
                await DecideAsync(
                    raised,
                    new
                    {
                        kind = "scrap",
                        reason = "again",
                        pin = Workshop.PinOf(Workshop.Quality),
                    }
                )
            ).Problem(409),
            StringComparison.Ordinal
        );
        var row = (await workshop.GetAsync("nonconformities?open=false")).Expect(200).List().Single(n => n.Id() == raised);
        Assert.Equal(("rework", "mount", "Quinn Quality"), (row.Text("disposition"), row.Text("returnTo"), row.Text("decidedBy.name")));
    }

    [Fact]
    public async Task A_scrapped_part_is_not_worked_on_again()
    {
        var serial = await workshop.MountAsync();
        (
            await DecideAsync(
                await RaiseAsync(serial),
                new
                {
                    kind = "scrap",
                    reason = "torn",
                    pin = Workshop.PinOf(Workshop.Quality),
                }
            )
        ).Expect(201);
        Assert.Equal("scrapped", await workshop.StateOfAsync(serial));
        (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { serial },
                }
            )
        ).Expect(409);
    }

    [Fact]
    public async Task Whoever_built_the_part_may_not_decide_a_concession_on_it()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await workshop.RecordAsync(
            serial,
            "mount",
            new
            {
                readings = new[] { new { characteristic = "coarseHz", value = 1101 } },
                fittings = new[] { new { position = "film", lot = Workshop.Film } },
            },
            Workshop.Importer
        );
        var raised = (await workshop.GetAsync("nonconformities?open=true")).Expect(200).List().First(n => n.Text("serial") == serial).Id();
        (
            await DecideAsync(
                raised,
                new
                {
                    kind = "concession",
                    reason = "one hertz",
                    pin = Workshop.PinOf(Workshop.Importer),
                },
                Workshop.Importer
            )
        ).Expect(403);
        (
            await DecideAsync(
                raised,
                new
                {
                    kind = "concession",
                    reason = "one hertz",
                    pin = Workshop.PinOf(Workshop.Quality),
                }
            )
        ).Expect(201);
        Assert.Equal("cure", (await workshop.GetAsync($"parts/{serial}")).Expect(200).Text("stage"));
    }

    [Fact]
    public async Task A_decision_needs_a_known_kind_a_reason_and_a_stage_of_the_route()
    {
        var raised = await RaiseAsync(await workshop.MountAsync());
        var pin = Workshop.PinOf(Workshop.Quality);
        (
            await DecideAsync(
                raised,
                new
                {
                    kind = "forget",
                    reason = "x",
                    pin,
                }
            )
        ).Expect(400);
        (
            await DecideAsync(
                raised,
                new
                {
                    kind = "rework",
                    returnTo = "bake",
                    reason = "x",
                    pin,
                }
            )
        ).Expect(400);
        (
            await DecideAsync(
                raised,
                new
                {
                    kind = "scrap",
                    returnTo = "mount",
                    reason = "x",
                    pin,
                }
            )
        ).Expect(400);
        (
            await DecideAsync(
                raised,
                new
                {
                    kind = "scrap",
                    reason = " ",
                    pin,
                }
            )
        ).Expect(400);
        (await DecideAsync(raised, new { kind = "scrap", reason = "x" })).Expect(400);
        (
            await DecideAsync(
                raised,
                new
                {
                    kind = "scrap",
                    reason = "x",
                    pin = Workshop.PinOf(Workshop.Builder),
                },
                Workshop.Builder
            )
        ).Expect(403);
        (
            await DecideAsync(
                Guid.NewGuid(),
                new
                {
                    kind = "scrap",
                    reason = "x",
                    pin,
                }
            )
        ).Expect(404);
        (
            await workshop.PostAsync($"parts/{await workshop.MountAsync()}/nonconformities", new { code = "Not A Code", description = "x" })
        ).Expect(400);
    }

    private async Task<Guid> RaiseAsync(string serial) =>
        (
            await workshop.PostAsync(
                $"parts/{serial}/nonconformities",
                new { code = "scratched-film", description = "a scratch across the film" }
            )
        )
            .Expect(201)
            .Id();

    private Task<Reply> DecideAsync(Guid id, object decision, string badge = Workshop.Quality) =>
        workshop.PostAsync($"nonconformities/{id}/disposition", decision, badge);
}

/// <summary>A workshop of its own, because the badge is locked afterwards.</summary>
public sealed class WrongPinTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Wrong_PINs_at_a_decision_count_as_failed_sign_ins()
    {
        var serial = await workshop.MountAsync();
        var raised = (
            await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "scratched-film", description = "a scratch" })
        )
            .Expect(201)
            .Id();
        for (var i = 0; i < 5; i++)
        {
            (
                await workshop.PostAsync(
                    $"nonconformities/{raised}/disposition",
                    new
                    {
                        kind = "scrap",
                        reason = "torn",
                        pin = "999999",
                    },
                    Workshop.Quality
                )
            ).Expect(403);
        }

        var right = await workshop.PostAsync(
            $"nonconformities/{raised}/disposition",
            new
            {
                kind = "scrap",
                reason = "torn",
                pin = Workshop.PinOf(Workshop.Quality),
            },
            Workshop.Quality
        );
        Assert.Contains("too many", right.Problem(429), StringComparison.Ordinal);
        (await workshop.PostAsync("sessions", new { badge = Workshop.Quality, pin = Workshop.PinOf(Workshop.Quality) }, null)).Expect(429);
        Assert.Equal("nonconforming", await workshop.StateOfAsync(serial));
    }
}
