namespace Traceability.Web.Tests.Station;

public sealed class RemovalTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_part_in_another_is_not_taken_apart_where_it_sits()
    {
        var capsule = await workshop.CapsuleAsync();
        var unit = await workshop.UnitAsync(capsule);
        Assert.Contains(unit, (await RemoveAsync(capsule, "front")).Problem(409), StringComparison.Ordinal);
        (await RemoveAsync(unit, "capsule", Workshop.ServiceDesk)).Expect(201);
        (await RemoveAsync(capsule, "front", Workshop.ServiceDesk)).Expect(201);
    }

    [Fact]
    public async Task Nothing_is_taken_out_under_an_attempt_at_a_later_stage()
    {
        var unit = await workshop.RegisterAsync("unit");
        object[] fittings =
        [
            new { position = "capsule", child = await workshop.CapsuleAsync() },
            new { position = "body", lot = Workshop.Body },
        ];
        await workshop.RecordAsync(unit, "assemble", new { fittings });
        var attempt = await workshop.OpenAsync(unit, "final-acoustic", "BENCH-1", "AN-1");
        Assert.Contains("open", (await RemoveAsync(unit, "capsule")).Problem(409), StringComparison.Ordinal);
        (await workshop.PostAsync($"attempts/{attempt}/abandon", new { reason = "capsule is to be changed" })).Expect(200);
        (await RemoveAsync(unit, "capsule")).Expect(201);
    }

    [Fact]
    public async Task A_removal_names_a_filled_position_and_a_reason()
    {
        var capsule = await workshop.CapsuleAsync();
        Assert.Contains("front, rear, ring", (await RemoveAsync(capsule, "middle")).Problem(400), StringComparison.Ordinal);
        (await workshop.PostAsync($"parts/{capsule}/removals", new { position = "front", reason = "" })).Expect(400);
        (await RemoveAsync("NOBODY", "front")).Expect(404);
        (await RemoveAsync(capsule, "front", Workshop.Lead)).Expect(403);
    }

    private Task<Reply> RemoveAsync(string serial, string position, string badge = Workshop.Builder) =>
        workshop.PostAsync($"parts/{serial}/removals", new { position, reason = "to be changed" }, badge);
}
