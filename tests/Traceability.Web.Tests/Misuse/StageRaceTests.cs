using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Misuse;

/// <summary>Eight at once work at a stage, fit, take out and load: one wins, the others are told so, and what is stored is whole.</summary>
public sealed class StageRaceTests(Workshop workshop) : IClassFixture<Workshop>, IAsyncLifetime
{
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
        await Racing.OneWinsAsync(
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
        await Racing.OneWinsAsync(200, "was closed at", _ => workshop.PostAsync($"attempts/{attempt}/close", null));
        Assert.Equal("cure", (await workshop.GetAsync($"parts/{serial}")).Expect(200).Text("stage"));
    }

    [Fact]
    public async Task One_of_a_closing_and_a_giving_up_comes_through()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount");
        (await workshop.PostAsync($"attempts/{attempt}/readings", MountReading)).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/fittings", FilmFitting)).Expect(201);
        await Racing.OneWinsAsync(
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
        await Racing.OneWinsAsync(
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
        await Racing.OneWinsAsync(201, "was already read as", _ => workshop.PostAsync($"attempts/{attempt}/readings", MountReading));
    }

    [Fact]
    public async Task One_child_goes_into_one_of_eight_parents()
    {
        var child = await workshop.DiaphragmAsync();
        var attempts = new List<Guid>();
        for (var i = 0; i < Racing.AtOnce; i++)
        {
            attempts.Add(await workshop.OpenAsync(await workshop.RegisterAsync("capsule"), "stack"));
        }

        await Racing.OneWinsAsync(
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
        for (var i = 0; i < Racing.AtOnce; i++)
        {
            capsules.Add(await workshop.RegisterAsync("capsule"));
        }

        await Racing.OneWinsAsync(
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
        await Racing.OneWinsAsync(
            201,
            "nothing is fitted",
            _ => workshop.PostAsync($"parts/{serial}/removals", new { position = "film", reason = "torn" })
        );
    }

    [Fact]
    public async Task Loads_that_share_parts_in_another_order_start_once()
    {
        var (one, other) = (await workshop.MountAsync(), await workshop.MountAsync());
        await Racing.OneWinsAsync(
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
        await Racing.OneWinsAsync(200, "closed", _ => workshop.PostAsync($"loads/{load}/close", null));
    }
}
