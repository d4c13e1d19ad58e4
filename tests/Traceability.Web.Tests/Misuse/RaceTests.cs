using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Misuse;

/// <summary>Eight at once: one wins, the others are told so, and what is stored is whole.</summary>
public sealed class RaceTests(Workshop workshop) : IClassFixture<Workshop>, IAsyncLifetime
{
    private const int AtOnce = 8;

    private static readonly object MountReading = new { characteristic = "coarseHz", value = 850 };
    private static readonly object FilmFitting = new { position = "film", lot = Workshop.Film };

    public Task InitializeAsync() => Task.CompletedTask;

    public async Task DisposeAsync()
    {
        await using var health = new HealthCheck(workshop);
        await health.PassAsync();
    }

    [Fact]
    public async Task One_of_eight_stations_opens_the_stage()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await OneWinsAsync(
            201,
            "is open at",
            i =>
                workshop.PostAsync(
                    $"parts/{serial}/attempts",
                    new { stage = "mount", station = i % 2 == 0 ? "BENCH-1" : "BENCH-2" },
                    i % 2 == 0 ? Workshop.Builder : Workshop.OtherBuilder
                )
        );
        Assert.Equal("in-work", await workshop.StateOfAsync(serial));
    }

    [Fact]
    public async Task One_of_eight_closings_closes()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount");
        (await workshop.PostAsync($"attempts/{attempt}/readings", MountReading)).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/fittings", FilmFitting)).Expect(201);
        await OneWinsAsync(200, "was closed at", _ => workshop.PostAsync($"attempts/{attempt}/close", null));
        Assert.Equal("cure", (await workshop.GetAsync($"parts/{serial}")).Expect(200).Text("stage"));
    }

    [Fact]
    public async Task One_of_a_closing_and_a_giving_up_comes_through()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount");
        (await workshop.PostAsync($"attempts/{attempt}/readings", MountReading)).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/fittings", FilmFitting)).Expect(201);
        await OneWinsAsync(
            200,
            "this attempt was",
            i =>
                i % 2 == 0
                    ? workshop.PostAsync($"attempts/{attempt}/close", null)
                    : workshop.PostAsync($"attempts/{attempt}/abandon", new { reason = "no" })
        );
    }

    [Fact]
    public async Task One_of_eight_records_is_written()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await OneWinsAsync(
            201,
            "was passed on",
            _ =>
                workshop.PostAsync(
                    $"parts/{serial}/records",
                    new
                    {
                        stage = "mount",
                        station = "BENCH-1",
                        readings = new[] { MountReading },
                        fittings = new[] { FilmFitting },
                    }
                )
        );
    }

    [Fact]
    public async Task One_of_eight_readings_of_the_same_characteristic_is_taken()
    {
        var attempt = await workshop.OpenAsync(await workshop.RegisterAsync("diaphragm"), "mount");
        await OneWinsAsync(201, "was already read as", _ => workshop.PostAsync($"attempts/{attempt}/readings", MountReading));
    }

    [Fact]
    public async Task One_child_goes_into_one_of_eight_parents()
    {
        var child = await workshop.DiaphragmAsync();
        var attempts = new List<Guid>();
        for (var i = 0; i < AtOnce; i++)
        {
            attempts.Add(await workshop.OpenAsync(await workshop.RegisterAsync("capsule"), "stack"));
        }

        await OneWinsAsync(
            201,
            "is already fitted in",
            i => workshop.PostAsync($"attempts/{attempts[i]}/fittings", new { position = i % 2 == 0 ? "front" : "rear", child })
        );
        Assert.Equal("fitted", await workshop.StateOfAsync(child));
    }

    [Fact]
    public async Task Two_children_wanted_crosswise_by_eight_parents_go_into_one()
    {
        var (one, other) = (await workshop.DiaphragmAsync(), await workshop.DiaphragmAsync());
        var capsules = new List<string>();
        for (var i = 0; i < AtOnce; i++)
        {
            capsules.Add(await workshop.RegisterAsync("capsule"));
        }

        await OneWinsAsync(
            201,
            "is already fitted in",
            i =>
            {
                var (front, rear) = i % 2 == 0 ? (one, other) : (other, one);
                object[] fittings =
                [
                    new { position = "front", child = front },
                    new { position = "rear", child = rear },
                    new { position = "ring", lot = Workshop.Ring },
                ];
                return workshop.PostAsync(
                    $"parts/{capsules[i]}/records",
                    new
                    {
                        stage = "stack",
                        station = "BENCH-1",
                        fittings,
                    }
                );
            }
        );
    }

    [Fact]
    public async Task One_of_eight_removals_takes_out()
    {
        var serial = await workshop.MountAsync();
        await OneWinsAsync(
            201,
            "nothing is fitted",
            _ => workshop.PostAsync($"parts/{serial}/removals", new { position = "film", reason = "torn" })
        );
    }

    [Fact]
    public async Task Loads_that_share_parts_in_another_order_start_once()
    {
        var (one, other) = (await workshop.MountAsync(), await workshop.MountAsync());
        await OneWinsAsync(
            201,
            "is open at",
            i =>
                workshop.PostAsync(
                    "loads",
                    new
                    {
                        stage = "cure",
                        station = "PLATE-1",
                        parts = i % 2 == 0 ? new[] { one, other } : [other, one],
                    }
                )
        );
    }

    [Fact]
    public async Task One_of_eight_closings_of_a_load_closes_it()
    {
        var load = (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { await workshop.MountAsync(), await workshop.MountAsync() },
                }
            )
        ).Expect(201).Id();
        (await workshop.PostAsync($"loads/{load}/log", Workshop.Csv(workshop.LogOfNow()))).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        await OneWinsAsync(200, "closed", _ => workshop.PostAsync($"loads/{load}/close", null));
    }

    [Fact]
    public async Task One_of_eight_decisions_stands()
    {
        var serial = await workshop.MountAsync();
        var raised = (await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "bent", description = "bent" }))
            .Expect(201)
            .Id();
        await OneWinsAsync(
            201,
            "decided already",
            i =>
                workshop.PostAsync(
                    $"nonconformities/{raised}/disposition",
                    new
                    {
                        kind = i % 2 == 0 ? "scrap" : "concession",
                        reason = "r",
                        pin = Workshop.PinOf(Workshop.Quality),
                    },
                    Workshop.Quality
                )
        );
    }

    [Fact]
    public async Task One_of_eight_lifts_the_hold()
    {
        var hold = (await workshop.PostAsync("holds", new { part = await workshop.MountAsync(), reason = "look" }, Workshop.Quality))
            .Expect(201)
            .Id();
        await OneWinsAsync(
            201,
            "lifted already",
            _ => workshop.PostAsync($"holds/{hold}/release", new { reason = "looked" }, Workshop.Quality)
        );
    }

    [Theory]
    [InlineData("serial")]
    [InlineData("carrier")]
    [InlineData("lot")]
    [InlineData("film lot")]
    [InlineData("badge")]
    [InlineData("instrument")]
    [InlineData("station")]
    public async Task One_of_eight_gets_the_name(string what)
    {
        var name = $"RACE-{Guid.NewGuid():N}"[..14].ToUpperInvariant();
        await OneWinsAsync(
            201,
            name,
            _ =>
                what switch
                {
                    "serial" => workshop.PostAsync(
                        "parts",
                        new
                        {
                            kind = "unit",
                            model = Workshop.Model,
                            serial = name,
                        }
                    ),
                    "carrier" => workshop.PostAsync(
                        "parts",
                        new
                        {
                            kind = "unit",
                            model = Workshop.Model,
                            carrier = name,
                        }
                    ),
                    "lot" => workshop.PostAsync(
                        "lots",
                        new
                        {
                            number = name,
                            kind = "body",
                            supplier = "Invented",
                            supplierLot = "S",
                            quantity = 1,
                            unit = "pcs",
                        },
                        Workshop.Quality
                    ),
                    "film lot" => workshop.PostAsync(
                        "lots",
                        new
                        {
                            number = name,
                            kind = "film",
                            supplier = "Invented",
                            supplierLot = "S",
                            quantity = 1,
                            unit = "m",
                            film = new { baseThicknessUm = 6, metalThicknessNm = 40 },
                        },
                        Workshop.Quality
                    ),
                    "badge" => workshop.PostAsync("people", new { badge = name, name = "Invented Person" }, Workshop.Lead),
                    "instrument" => workshop.PostAsync(
                        "instruments",
                        new
                        {
                            code = name,
                            kind = "gauge",
                            title = "Gauge",
                        },
                        Workshop.Lead
                    ),
                    _ => workshop.PostAsync("stations", new { code = name, title = "Bench" }, Workshop.Lead),
                }
        );
    }

    [Fact]
    public async Task Eight_registrations_at_once_get_eight_serials()
    {
        var replies = await Task.WhenAll(
            Enumerable.Range(0, AtOnce).Select(_ => workshop.PostAsync("parts", new { kind = "unit", model = Workshop.Model }))
        );
        Assert.Equal(AtOnce, replies.Select(r => r.Expect(201).Text("serial")).Distinct().Count());
    }

    [Fact]
    public async Task Eight_facts_about_one_lot_at_once_are_all_kept()
    {
        var number = $"RACE-{Guid.NewGuid():N}"[..12].ToUpperInvariant();
        await WorkshopSetUp.LotAsync(workshop, number, "body");
        var replies = await Task.WhenAll(
            Enumerable
                .Range(0, AtOnce)
                .Select(i => workshop.PostAsync("holds", new { lot = number, reason = $"reason {i}" }, Workshop.Quality))
        );
        Assert.All(replies, r => r.Expect(201));
    }

    private static async Task OneWinsAsync(int status, string words, Func<int, Task<Reply>> command)
    {
        var replies = await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(i => Task.Run(() => command(i))));
        Assert.Equal(1, replies.Count(r => (int)r.Status == status));
        Assert.All(replies.Where(r => (int)r.Status != status), r => Assert.Contains(words, r.Problem(409), StringComparison.Ordinal));
    }
}
