namespace Traceability.Web.Tests.Storage;

[Trait("Category", "Storage")]
public sealed class DerivedStateTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task What_the_service_wrote_agrees_with_itself()
    {
        await workshop.UnitAsync();
        await using var health = new HealthCheck(workshop);
        await health.PassAsync();
    }

    [Theory]
    [InlineData(
        "update part_standings set state = 'finished', finished = true where part_id = (select id from parts where serial = '{0}')",
        "stage cure, finished"
    )]
    [InlineData(
        "update part_standings set carrier_code = 'JIG-LIE' where part_id = (select id from parts where serial = '{0}')",
        "carrier JIG-LIE"
    )]
    [InlineData("delete from part_standings where part_id = (select id from parts where serial = '{0}')", "{0} has no standing")]
    [InlineData(
        "update stage_verdicts set passed = not passed where part_id = (select id from parts where serial = '{0}')",
        "{0}: a verdict on mount is kept"
    )]
    [InlineData(
        "update stage_verdicts set serial = 'LIE' where part_id = (select id from parts where serial = '{0}')",
        "LIE: a verdict on mount is kept"
    )]
    [InlineData("delete from stage_verdicts where part_id = (select id from parts where serial = '{0}')", "{0} has no verdict on mount")]
    [InlineData(
        "insert into stage_verdicts select gen_random_uuid(), part_id, serial, kind, model, stage, 7, place, begun_at, ended_at, false,"
            + " passed from stage_verdicts where part_id = (select id from parts where serial = '{0}')",
        "{0}: a verdict on mount is kept"
    )]
    [InlineData(
        "update part_standings set route_id = gen_random_uuid() where part_id = (select id from parts where serial = '{0}')",
        "{0}: kept (route"
    )]
    [InlineData("delete from containments where container_id = (select id from parts where serial = '{0}')", "missing")]
    [InlineData(
        "update containments set present_until = now() where container_id = (select id from parts where serial = '{0}')",
        "another end or depth"
    )]
    [InlineData(
        "insert into containments (container_id, fitting_id, item_id, item_is_lot, depth, present_from) select container_id,"
            + " gen_random_uuid(), item_id, item_is_lot, 2, present_from from containments where container_id = (select id from parts"
            + " where serial = '{0}')",
        "no fact supports it"
    )]
    public async Task A_wrong_derived_row_is_named_and_mended(string damage, string named)
    {
        var serial = await workshop.MountAsync();
        await using var door = BackDoor.Of(workshop);
        var right = await door.RowsAsync();
        Assert.Equal(1, await door.RunAsync(string.Format(null, damage, serial)));
        Assert.NotEqual(right, await door.RowsAsync());

        await using var health = new HealthCheck(workshop);
        var found = Assert.Single(await health.DerivedAsync(mend: false));
        Assert.Contains(string.Format(null, named, serial), found, StringComparison.Ordinal);
        Assert.NotEqual(right, await door.RowsAsync());
        Assert.Single(await health.DerivedAsync(mend: true));
        Assert.Empty(await health.DerivedAsync(mend: false));
        await SameButForTimesAsync(door, serial);
    }

    /// <summary>A mended row may carry another time of its last change; everything else is as before.</summary>
    private async Task SameButForTimesAsync(BackDoor door, string serial)
    {
        Assert.Equal("ready", await workshop.StateOfAsync(serial));
        Assert.Equal(
            "cure -",
            await door.AskAsync<string>(
                "select stage || ' ' || coalesce(carrier_code, '-') from part_standings where part_id = (select id from parts where"
                    + $" serial = '{serial}')"
            )
        );
        Assert.Equal(
            1,
            await door.AskAsync<long>(
                "select count(*) from containments where present_until is null and container_id = (select id from parts where serial ="
                    + $" '{serial}')"
            )
        );
    }
}
