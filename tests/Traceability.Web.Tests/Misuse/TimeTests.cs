namespace Traceability.Web.Tests.Misuse;

public sealed class TimeTests(StrictWorkshop strict) : IClassFixture<StrictWorkshop>
{
    private readonly Workshop workshop = strict.Workshop;

    [Fact]
    public async Task The_future_is_refused_for_everybody_beyond_the_difference_of_two_clocks()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await strict.RefusedAsync(400, "lies in the future", () => MountAsync(serial, Workshop.Builder, minutes: 3));
        await strict.RefusedAsync(400, "lies in the future", () => MountAsync(serial, Workshop.Importer, minutes: 3));
        (await MountAsync(serial, Workshop.Builder, minutes: 1)).Expect(201);
    }

    [Fact]
    public async Task The_past_is_for_the_importer_alone()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await strict.RefusedAsync(
            403,
            "only the importer role may enter older records",
            () => MountAsync(serial, Workshop.Builder, minutes: -3)
        );
        (await MountAsync(serial, Workshop.Builder, minutes: -1)).Expect(201);
        var older = (
            await workshop.PostAsync(
                "parts",
                new
                {
                    kind = "diaphragm",
                    model = Workshop.Model,
                    occurredAt = Ago(90),
                },
                Workshop.Importer
            )
        ).Expect(201).Text("serial");
        (await MountAsync(older, Workshop.Importer, minutes: -60)).Expect(201);
        var told = (await workshop.GetAsync($"parts/{older}/history")).Expect(200).List();
        Assert.All(told, e => Assert.True(e.At("recordedAt").GetDateTimeOffset() > e.At("occurredAt").GetDateTimeOffset().AddMinutes(59)));
    }

    [Fact]
    public async Task A_parts_life_runs_forward()
    {
        var serial = (
            await workshop.PostAsync(
                "parts",
                new
                {
                    kind = "diaphragm",
                    model = Workshop.Model,
                    occurredAt = Ago(600),
                },
                Workshop.Importer
            )
        ).Expect(201).Text("serial");
        await strict.RefusedAsync(409, "is earlier than the last event on", () => MountAsync(serial, Workshop.Importer, minutes: -660));
        (await MountAsync(serial, Workshop.Importer, minutes: -300)).Expect(201);
        await strict.RefusedAsync(
            409,
            "is earlier than the last event on",
            () =>
                workshop.PostAsync(
                    "loads",
                    new
                    {
                        stage = "cure",
                        station = "PLATE-1",
                        parts = new[] { serial },
                        occurredAt = Ago(400),
                    },
                    Workshop.Importer
                )
        );
        await strict.RefusedAsync(
            409,
            "is earlier than the last event on",
            () =>
                workshop.PostAsync(
                    $"parts/{serial}/removals",
                    new
                    {
                        position = "film",
                        reason = "torn",
                        occurredAt = Ago(400),
                    },
                    Workshop.Importer
                )
        );
    }

    [Fact]
    public async Task A_stage_does_not_end_before_it_began()
    {
        var serial = (
            await workshop.PostAsync(
                "parts",
                new
                {
                    kind = "diaphragm",
                    model = Workshop.Model,
                    occurredAt = Ago(600),
                },
                Workshop.Importer
            )
        ).Expect(201).Text("serial");
        var attempt = (
            await workshop.PostAsync(
                $"parts/{serial}/attempts",
                new
                {
                    stage = "mount",
                    station = "BENCH-1",
                    occurredAt = Ago(500),
                },
                Workshop.Importer
            )
        ).Expect(201).Id();
        (
            await workshop.PostAsync(
                $"attempts/{attempt}/readings",
                new
                {
                    characteristic = "coarseHz",
                    value = 850,
                    occurredAt = Ago(499),
                },
                Workshop.Importer
            )
        ).Expect(201);
        (
            await workshop.PostAsync(
                $"attempts/{attempt}/fittings",
                new
                {
                    position = "film",
                    lot = Workshop.Film,
                    occurredAt = Ago(499),
                },
                Workshop.Importer
            )
        ).Expect(201);
        await strict.RefusedAsync(
            409,
            "before it began",
            () => workshop.PostAsync($"attempts/{attempt}/close", new { occurredAt = Ago(550) }, Workshop.Importer)
        );
        (await workshop.PostAsync($"attempts/{attempt}/close", new { occurredAt = Ago(480) }, Workshop.Importer)).Expect(200);
    }

    [Fact]
    public async Task A_child_is_not_fitted_before_it_was_finished()
    {
        var (front, rear) = (await workshop.DiaphragmAsync(), await workshop.DiaphragmAsync());
        var capsule = (
            await workshop.PostAsync(
                "parts",
                new
                {
                    kind = "capsule",
                    model = Workshop.Model,
                    occurredAt = Ago(6000),
                },
                Workshop.Importer
            )
        ).Expect(201).Text("serial");
        Task<Reply> Stack(double minutesAgo)
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
                    occurredAt = Ago(minutesAgo),
                },
                Workshop.Importer
            );
        }

        await strict.ClosedByAsync("inputs", $"{front} was not free before", () => Stack(500));
        (await Stack(0)).Expect(201);
    }

    [Fact]
    public async Task A_child_is_not_fitted_before_it_was_taken_out_elsewhere()
    {
        var (front, rear) = (await workshop.DiaphragmAsync(), await workshop.DiaphragmAsync());
        var first = await workshop.CapsuleAsync(front, rear);
        workshop.Clock.Pass(TimeSpan.FromMinutes(60));
        foreach (var position in new[] { "front", "rear" })
        {
            (await workshop.PostAsync($"parts/{first}/removals", new { position, reason = "pair them anew" })).Expect(201);
        }

        var second = await workshop.RegisterAsync("capsule");
        var at = Ago(30);
        object[] fittings =
        [
            new { position = "front", child = front },
            new { position = "rear", child = rear },
            new { position = "ring", lot = Workshop.Ring },
        ];
        var older = (
            await workshop.PostAsync(
                "parts",
                new
                {
                    kind = "capsule",
                    model = Workshop.Model,
                    occurredAt = Ago(55),
                },
                Workshop.Importer
            )
        ).Expect(201).Text("serial");
        await strict.ClosedByAsync(
            "inputs",
            $"{front} was not free before",
            () =>
                workshop.PostAsync(
                    $"parts/{older}/records",
                    new
                    {
                        stage = "stack",
                        station = "BENCH-1",
                        fittings,
                        occurredAt = at,
                    },
                    Workshop.Importer
                )
        );
        (
            await workshop.PostAsync(
                $"parts/{second}/records",
                new
                {
                    stage = "stack",
                    station = "BENCH-1",
                    fittings,
                }
            )
        ).Expect(201);
    }

    [Theory]
    [InlineData("yesterday")]
    [InlineData("2026-02-30T00:00:00Z")]
    [InlineData("2026-13-01T00:00:00Z")]
    [InlineData("1767225600")]
    [InlineData("")]
    public async Task A_time_that_is_none_is_refused(string occurredAt)
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var reply = await workshop.PostAsync(
            $"parts/{serial}/attempts",
            new
            {
                stage = "mount",
                station = "BENCH-1",
                occurredAt,
            },
            Workshop.Importer
        );
        Assert.Contains("a time is expected here", reply.Problem(400), StringComparison.OrdinalIgnoreCase);
    }

    private DateTimeOffset Ago(double minutes) => workshop.Clock.GetUtcNow().AddMinutes(-minutes);

    private Task<Reply> MountAsync(string serial, string badge, double minutes) =>
        workshop.PostAsync(
            $"parts/{serial}/records",
            new
            {
                stage = "mount",
                station = "BENCH-1",
                readings = new[] { new { characteristic = "coarseHz", value = 850 } },
                fittings = new[] { new { position = "film", lot = Workshop.Film } },
                occurredAt = Ago(-minutes),
            },
            badge
        );
}
