namespace Traceability.Web.Tests.Misuse;

public sealed class GateMisuseTests(StrictWorkshop strict) : IClassFixture<StrictWorkshop>
{
    private readonly Workshop workshop = strict.Workshop;

    [Fact]
    public async Task A_stage_out_of_order_is_refused()
    {
        var serial = await strict.RegisterAsync();
        await strict.ClosedByAsync(
            "earlier-stages",
            "not passed yet: Measure",
            () => workshop.PostAsync($"parts/{serial}/records", new { stage = "look", station = "BENCH-1" })
        );
        await strict.ClosedByAsync(
            "earlier-stages",
            "not passed yet: Measure",
            () => workshop.PostAsync($"parts/{serial}/attempts", new { stage = "look", station = "BENCH-1" })
        );
    }

    [Fact]
    public async Task A_stage_done_twice_is_refused()
    {
        var serial = await strict.RegisterAsync();
        (await strict.RecordAsync(serial)).Expect(201);
        await strict.ClosedByAsync("not-passed-yet", "Measure was passed on", () => strict.RecordAsync(serial));
    }

    [Fact]
    public async Task A_stage_that_is_open_elsewhere_is_refused()
    {
        var serial = await strict.RegisterAsync();
        await workshop.OpenAsync(serial, StrictWorkshop.Stage, "BENCH-2", StrictWorkshop.Gauge);
        await strict.ClosedByAsync("one-at-a-time", "open at BENCH-2", () => strict.RecordAsync(serial));
    }

    [Fact]
    public async Task A_stage_of_another_route_and_an_unknown_station_are_refused()
    {
        var serial = await strict.RegisterAsync();
        await strict.RefusedAsync(400, "has no stage 'bake'; its stages: measure, look", () => strict.RecordAsync(serial, stage: "bake"));
        await strict.RefusedAsync(
            400,
            "there is no station 'NOWHERE'",
            () => workshop.PostAsync($"parts/{serial}/attempts", new { stage = StrictWorkshop.Stage, station = "NOWHERE" })
        );
        await strict.RefusedAsync(404, "there is no part or carrier 'NOBODY'", () => strict.RecordAsync("NOBODY"));
    }

    [Fact]
    public async Task A_held_part_is_left_alone()
    {
        var serial = await strict.RegisterAsync();
        (await workshop.PostAsync("holds", new { part = serial, reason = "dropped" }, Workshop.Quality)).Expect(201);
        await strict.ClosedByAsync("part-usable", $"{serial} is on hold: dropped", () => strict.RecordAsync(serial));
    }

    [Fact]
    public async Task A_part_that_was_held_in_the_middle_of_a_stage_takes_nothing_in_and_is_not_closed()
    {
        var serial = await strict.RegisterAsync();
        var attempt = await workshop.OpenAsync(serial, StrictWorkshop.Stage, "BENCH-1", StrictWorkshop.Gauge);
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "heightMm", value = 9 })).Expect(201);
        (await workshop.PostAsync("holds", new { part = serial, reason = "look first" }, Workshop.Quality)).Expect(201);
        await strict.ClosedByAsync(
            "part-usable",
            "look first",
            () => workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "bond", lot = "GLUE-1" })
        );
        await strict.ClosedByAsync("part-usable", "look first", () => workshop.PostAsync($"attempts/{attempt}/close", null));
    }

    [Fact]
    public async Task A_scrapped_part_is_left_alone()
    {
        var serial = await strict.RegisterAsync();
        var raised = (await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "bent", description = "bent" }))
            .Expect(201)
            .Id();
        await strict.ClosedByAsync("nonconformities", "bent", () => strict.RecordAsync(serial));
        (
            await workshop.PostAsync(
                $"nonconformities/{raised}/disposition",
                new
                {
                    kind = "scrap",
                    reason = "bent",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);
        await strict.ClosedByAsync("part-usable", $"{serial} was scrapped", () => strict.RecordAsync(serial));
    }

    [Fact]
    public async Task A_child_that_is_fitted_elsewhere_stays_there()
    {
        var (front, rear) = (await workshop.DiaphragmAsync(), await workshop.DiaphragmAsync());
        var home = await workshop.CapsuleAsync(front, rear);
        var other = await workshop.RegisterAsync("capsule");
        var free = await workshop.DiaphragmAsync();
        await strict.ClosedByAsync("inputs", $"{front} is already fitted in {home}", () => StackAsync(other, front, free));
        await strict.ClosedByAsync(
            "part-usable",
            $"{front} is fitted in {home}",
            () =>
                workshop.PostAsync(
                    $"parts/{front}/attempts",
                    new
                    {
                        stage = "verify",
                        station = "BENCH-1",
                        instruments = new[] { "RB-1" },
                    }
                )
        );
    }

    [Fact]
    public async Task A_child_twice_of_the_wrong_kind_unfinished_or_unknown_is_refused()
    {
        var capsule = await workshop.RegisterAsync("capsule");
        var (good, raw) = (await workshop.DiaphragmAsync(), await workshop.MountAsync());
        await strict.ClosedByAsync("inputs", $"{good} was named for front and rear", () => StackAsync(capsule, good, good));
        await strict.ClosedByAsync("inputs", $"{capsule} is a capsule", () => StackAsync(capsule, good, capsule));
        await strict.ClosedByAsync("inputs", $"{raw} has not passed its own route yet", () => StackAsync(capsule, good, raw));
        await strict.RefusedAsync(400, "there is no part or carrier 'NOBODY'", () => StackAsync(capsule, good, "NOBODY"));
    }

    [Fact]
    public async Task An_unqualified_builder_is_refused()
    {
        var serial = await strict.RegisterAsync();
        await strict.ClosedByAsync(
            "qualified",
            "Ben Builder is not qualified for fine-work",
            () => strict.RecordAsync(serial, Workshop.OtherBuilder)
        );
    }

    [Fact]
    public async Task A_qualification_that_ran_out_yesterday_is_none()
    {
        var serial = await strict.RegisterAsync();
        var yesterday = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime).AddDays(-1);
        (
            await workshop.PostAsync(
                $"people/{Workshop.Importer}/qualifications",
                new
                {
                    code = "fine-work",
                    given = true,
                    validUntil = yesterday,
                },
                Workshop.Lead
            )
        ).Expect(200);
        await strict.ClosedByAsync("qualified", "not qualified for fine-work", () => strict.RecordAsync(serial, Workshop.Importer));
        (
            await workshop.PostAsync(
                $"people/{Workshop.Importer}/qualifications",
                new
                {
                    code = "fine-work",
                    given = true,
                    validUntil = yesterday.AddDays(1),
                },
                Workshop.Lead
            )
        ).Expect(200);
        (await strict.RecordAsync(serial, Workshop.Importer)).Expect(201);
    }

    private Task<Reply> StackAsync(string capsule, string front, string rear)
    {
        object[] fittings =
        [
            new { position = "front", child = front },
            new { position = "rear", child = rear },
            new { position = "ring", lot = Workshop.Ring },
        ];
        return workshop.PostAsync(
            $"parts/{capsule}/records",
            new
            {
                stage = "stack",
                station = "BENCH-1",
                fittings,
            }
        );
    }
}
