namespace Traceability.Web.Tests.Storage;

/// <summary>Computed readings come out the same again, and one that does not is named.</summary>
[Trait("Category", "Storage")]
public sealed class RecomputationTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData("update readings set digits = '9.9' where id = '{0}'", "stored as 9.9")]
    [InlineData("delete from readings where id = '{0}'", "stored as nothing")]
    [InlineData("update attempt_endings set failed_by_finding = true where attempt_id = (select attempt_id from readings where id = '{0}')", "failed by a finding then, by none now")]
    public async Task A_computed_reading_changed_behind_the_service_is_named(string damage, string named)
    {
        var unit = await workshop.UnitAsync();
        await using var door = BackDoor.Of(workshop);
        var reading = await door.AskAsync<Guid>($"select r.id from readings r join parts p on p.id = r.part_id where p.serial = '{unit}' and r.source = 'Computed'");
        await using var health = new HealthCheck(workshop);
        var before = await health.RecomputedAsync();

        await door.TamperAsync(string.Format(null, damage, reading));

        Assert.Contains(named, Assert.Single((await health.RecomputedAsync()).Differences.Except(before.Differences)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_attempt_of_another_version_of_its_method_is_counted_and_left_alone()
    {
        var unit = await workshop.UnitAsync();
        await using var door = BackDoor.Of(workshop);
        await using var health = new HealthCheck(workshop);
        var before = await health.RecomputedAsync();

        await door.TamperAsync($"update attempt_endings set method_version = 99 where part_id = (select id from parts where serial = '{unit}')");

        var after = await health.RecomputedAsync();
        Assert.True(after.OlderMethod > before.OlderMethod);
        Assert.Equal(before.Judged + before.OlderMethod, after.Judged + after.OlderMethod);
    }
}
