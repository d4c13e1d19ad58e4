using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality;

public sealed class HoldTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_held_part_is_on_hold_until_the_hold_is_lifted_once()
    {
        var serial = await workshop.MountAsync();
        var hold = await HoldAsync(new { part = serial, reason = "look again" });
        Assert.Equal("on-hold", await workshop.StateOfAsync(serial));
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
        (await LiftAsync(hold)).Expect(201);
        Assert.Equal("ready", await workshop.StateOfAsync(serial));
        Assert.Contains("lifted already", (await LiftAsync(hold)).Problem(409), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_held_lot_stops_everything_made_of_it()
    {
        await WorkshopSetUp.LotAsync(workshop, "FILM-H", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var serial = await workshop.MountAsync("FILM-H");
        var hold = await HoldAsync(new { lot = "film-h", reason = "pinholes" });
        var refused = await workshop.PostAsync(
            "loads",
            new
            {
                stage = "cure",
                station = "PLATE-1",
                parts = new[] { serial },
            }
        );
        Assert.Contains("pinholes", refused.Problem(409), StringComparison.Ordinal);
        (await LiftAsync(hold)).Expect(201);
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
        ).Expect(201);
    }

    [Fact]
    public async Task A_held_instrument_is_not_measured_with()
    {
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        var hold = await HoldAsync(new { instrument = "RB-1", reason = "dropped" });
        var refused = await workshop.PostAsync(
            $"parts/{serial}/attempts",
            new
            {
                stage = "verify",
                station = "BENCH-1",
                instruments = new[] { "RB-1" },
            }
        );
        Assert.Contains("dropped", refused.Problem(409), StringComparison.Ordinal);
        (await LiftAsync(hold)).Expect(201);
        await workshop.VerifyAsync(serial, 900);
    }

    [Fact]
    public async Task The_list_tells_open_holds_from_lifted_ones()
    {
        var serial = await workshop.MountAsync();
        var lifted = await HoldAsync(new { part = serial, reason = "first look" });
        (await LiftAsync(lifted)).Expect(201);
        var open = await HoldAsync(new { part = serial, reason = "second look" });
        var openIds = (await workshop.GetAsync("holds?open=true")).Expect(200).List().Select(h => h.Id()).ToList();
        var other = (await workshop.GetAsync("holds?open=false")).Expect(200).List().Single(h => h.Id() == lifted);
        Assert.Contains(open, openIds);
        Assert.DoesNotContain(lifted, openIds);
        Assert.Equal(
            (serial, "looked at", "Quinn Quality"),
            (other.Text("part"), other.Text("releaseReason"), other.Text("releasedBy.name"))
        );
    }

    [Fact]
    public async Task A_hold_names_exactly_one_thing_that_exists_and_a_reason()
    {
        var serial = await workshop.MountAsync();
        async Task RefusedAsync(int status, object hold, string badge = Workshop.Quality) =>
            (await workshop.PostAsync("holds", hold, badge)).Expect(status);
        await RefusedAsync(400, new { reason = "nothing named" });
        await RefusedAsync(
            400,
            new
            {
                part = serial,
                lot = Workshop.Film,
                reason = "two named",
            }
        );
        await RefusedAsync(400, new { part = serial, reason = "" });
        await RefusedAsync(400, new { part = serial });
        await RefusedAsync(404, new { part = "NOBODY", reason = "x" });
        await RefusedAsync(404, new { lot = "NOTHING", reason = "x" });
        await RefusedAsync(404, new { instrument = "", reason = "x" });
        await RefusedAsync(403, new { part = serial, reason = "x" }, Workshop.Builder);
        (await LiftAsync(Guid.NewGuid())).Expect(404);
    }

    [Fact]
    public async Task A_hold_and_a_lot_say_what_stops()
    {
        await WorkshopSetUp.LotAsync(workshop, "CON-STOP", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        await workshop.MountAsync("CON-STOP");
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        Assert.Contains(
            "1 parts that contain it stop: 1 diaphragm",
            (await desk.GetAsync("/lots/CON-STOP")).Words,
            StringComparison.Ordinal
        );
        (await workshop.PostAsync("holds", new { lot = "CON-STOP", reason = "doubt" }, Workshop.Quality)).Expect(201);
        Assert.Contains("Stops 1 parts now: 1 diaphragm", (await desk.GetAsync("/holds")).Words, StringComparison.Ordinal);
    }

    private async Task<Guid> HoldAsync(object hold) => (await workshop.PostAsync("holds", hold, Workshop.Quality)).Expect(201).Id();

    private Task<Reply> LiftAsync(Guid hold) => workshop.PostAsync($"holds/{hold}/release", new { reason = "looked at" }, Workshop.Quality);
}
