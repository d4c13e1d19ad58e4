using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Tests.Storage;

/// <summary>Computed readings come out the same again, and one that does not is named.</summary>
[Trait("Category", "Storage")]
public sealed class RecomputationTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData("update readings set digits = '9.9' where id = '{0}'", "stored as 9.9")]
    [InlineData("delete from readings where id = '{0}'", "stored as nothing")]
    [InlineData(
        "update attempt_endings set failed_by_finding = true where attempt_id = (select attempt_id from readings where id = '{0}')",
        "failed by a finding then, by none now"
    )]
    public async Task A_computed_reading_changed_behind_the_service_is_named(string damage, string named)
    {
        var unit = await workshop.UnitAsync();
        await using var door = BackDoor.Of(workshop);
        var reading = await door.AskAsync<Guid>(
            $"select r.id from readings r join parts p on p.id = r.part_id where p.serial = '{unit}' and r.source = 'Computed'"
        );
        await using var health = new HealthCheck(workshop);
        var before = await health.RecomputedAsync();

        await door.TamperAsync(string.Format(null, damage, reading));

        Assert.Contains(
            named,
            Assert.Single((await health.RecomputedAsync()).Differences.Except(before.Differences)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task An_attempt_of_another_version_of_its_method_is_counted_and_left_alone()
    {
        var unit = await workshop.UnitAsync();
        await using var door = BackDoor.Of(workshop);
        await using var health = new HealthCheck(workshop);
        var before = await health.RecomputedAsync();

        await door.TamperAsync(
            $"update attempt_endings set method_version = 99 where part_id = (select id from parts where serial = '{unit}')"
        );

        var after = await health.RecomputedAsync();
        Assert.True(after.OlderMethod > before.OlderMethod);
        Assert.Equal(before.Judged + before.OlderMethod, after.Judged + after.OlderMethod);
    }

    [Theory]
    [InlineData(
        "insert into readings select (jsonb_populate_record(r, jsonb_build_object('id', gen_random_uuid()))).* from readings r join"
            + " parts p on p.id = r.part_id where p.serial = '{0}'",
        "cannot be judged again"
    )]
    [InlineData("update route_revisions set text = 'no route' where kind = 'diaphragm' and '{0}' <> ''", "cannot be read")]
    public async Task What_cannot_be_read_any_more_is_named_and_the_others_are_judged(string damage, string named)
    {
        await using var fresh = new Workshop();
        await fresh.InitializeAsync();
        var (unit, other) = (await fresh.UnitAsync(), await fresh.UnitAsync());
        await using var door = BackDoor.Of(fresh);
        await door.TamperAsync(string.Format(null, damage, unit));
        await door.TamperAsync(
            $"update readings set digits = '9.9' where part_id = (select id from parts where serial = '{other}') and source = 'Computed'"
        );

        await using var health = new HealthCheck(fresh);
        var readers = new DossierReader(health.Db, new RouteShelf());
        var differences = (await new Recomputation(health.Db, readers).RunAsync(null, default)).Differences;
        var derived = await new DerivedState(health.Db, readers).CompareAsync(false, null, default);

        Assert.Contains(differences.Concat(derived), d => d.Contains(named, StringComparison.Ordinal));
        Assert.Contains(
            differences,
            d => d.StartsWith(other, StringComparison.Ordinal) && d.Contains("stored as 9.9", StringComparison.Ordinal)
        );
    }
}
