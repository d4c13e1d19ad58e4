using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Hosting;

/// <summary>A server whose clock went back would put new facts before old ones.</summary>
[Trait("Category", "Storage")]
public sealed class ServerClockTests : IAsyncLifetime
{
    private readonly Workshop workshop = new();

    public Task InitializeAsync() => workshop.InitializeAsync();

    public Task DisposeAsync() => workshop.DisposeAsync();

    [Fact]
    public async Task A_clock_more_than_a_minute_behind_the_newest_record_writes_nothing_and_says_why()
    {
        var serial = await workshop.MountAsync();
        await using var door = BackDoor.Of(workshop);
        workshop.Clock.Pass(TimeSpan.FromMinutes(-10));

        await door.UntouchedByAsync(async () =>
        {
            var registered = await workshop.PostAsync("parts", new { kind = "diaphragm", model = Workshop.Model });
            Assert.Equal(503, (int)registered.Status);
            Assert.Contains("clock", registered.Json.Text("detail"), StringComparison.Ordinal);
            Assert.Equal(
                503,
                (int)(await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "scratch", description = "seen" })).Status
            );
            Assert.Equal(
                503,
                (int)(await workshop.PostAsync($"lots/{Workshop.Film}/quarantine", new { reason = "seen" }, Workshop.Quality)).Status
            );
        });
        (await workshop.GetAsync($"parts/{serial}")).Expect(200);
        var ready = await workshop.GetAsync("/health/ready", null);
        Assert.Equal((503, "clock-behind"), ((int)ready.Status, ready.Json.Text("status")));

        workshop.Clock.Pass(TimeSpan.FromMinutes(9.5));
        (await workshop.PostAsync("parts", new { kind = "diaphragm", model = Workshop.Model })).Expect(201);
        (await workshop.GetAsync("/health/ready", null)).Expect(200);
    }
}
