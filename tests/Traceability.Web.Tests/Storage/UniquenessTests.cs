using Npgsql;

namespace Traceability.Web.Tests.Storage;

[Trait("Category", "Storage")]
public sealed class UniquenessTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Place =
        "insert into part_standings (part_id, route_id, state, finished, carrier_code, changed_at) values (gen_random_uuid(),"
        + " gen_random_uuid(), 'ready', false, $1, now())";

    private const string Contain = """
        insert into containments (container_id, fitting_id, item_id, item_is_lot, depth, present_from, present_until)
        values (gen_random_uuid(), gen_random_uuid(), $1, $2, $3, now(), $4)
        """;

    [Fact]
    public async Task A_carrier_holds_one_part_at_a_time()
    {
        await using var door = BackDoor.Of(workshop);
        await door.RunAsync(Place, "JIG-U");
        await RefusedAsync(door.RunAsync(Place, "JIG-U"), "ix_part_standings_carrier_code");
        await door.RunAsync("update part_standings set carrier_code = null where carrier_code = 'JIG-U'");
        await door.RunAsync(Place, "JIG-U");
    }

    [Fact]
    public async Task A_part_is_in_one_parent_at_a_time()
    {
        await using var door = BackDoor.Of(workshop);
        var child = Guid.NewGuid();
        await door.RunAsync(Contain, child, false, 1, DBNull.Value);
        await RefusedAsync(door.RunAsync(Contain, child, false, 1, DBNull.Value), "ux_containments_one_parent");
        await door.RunAsync(Contain, child, false, 2, DBNull.Value);
        await door.RunAsync(Contain, child, false, 1, DateTimeOffset.UtcNow);
        await door.RunAsync("update containments set present_until = now() where item_id = $1", child);
        await door.RunAsync(Contain, child, false, 1, DBNull.Value);
    }

    [Fact]
    public async Task A_lot_is_in_many_parts_at_a_time()
    {
        await using var door = BackDoor.Of(workshop);
        var lot = Guid.NewGuid();
        Assert.Equal(1, await door.RunAsync(Contain, lot, true, 1, DBNull.Value));
        Assert.Equal(1, await door.RunAsync(Contain, lot, true, 1, DBNull.Value));
    }

    [Theory]
    [InlineData("people")]
    [InlineData("stations")]
    [InlineData("carriers")]
    [InlineData("instruments")]
    [InlineData("route_revisions")]
    [InlineData("lots")]
    [InlineData("parts")]
    [InlineData("attempts")]
    [InlineData("attempt_endings")]
    [InlineData("removals")]
    [InlineData("dispositions")]
    [InlineData("hold_releases")]
    [InlineData("ledger_entries")]
    public async Task The_same_thing_under_another_id_is_refused(string table)
    {
        await MakeOneOfEachAsync();
        await using var door = BackDoor.Of(workshop);
        Assert.True(await door.AskAsync<bool>($"select exists (select from {table})"));
        var copy = door.RunAsync(
            $"insert into {table} select (jsonb_populate_record(t, jsonb_build_object('id', gen_random_uuid()))).* from {table} t limit 1"
        );
        Assert.Equal(PostgresErrorCodes.UniqueViolation, (await Assert.ThrowsAsync<PostgresException>(() => copy)).SqlState);
    }

    private async Task MakeOneOfEachAsync()
    {
        var serial = await workshop.RegisterAsync("diaphragm", $"JIG-{Guid.NewGuid():N}"[..12]);
        await workshop.RecordAsync(
            serial,
            "mount",
            new
            {
                readings = new[] { new { characteristic = "coarseHz", value = 850 } },
                fittings = new[] { new { position = "film", lot = Workshop.Film } },
            }
        );
        (await workshop.PostAsync($"parts/{serial}/removals", new { position = "film", reason = "torn" })).Expect(201);
        var hold = (await workshop.PostAsync("holds", new { part = serial, reason = "look" }, Workshop.Quality)).Expect(201).Id();
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "looked" }, Workshop.Quality)).Expect(201);
        var raised = (await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "torn-film", description = "torn" }))
            .Expect(201)
            .Id();
        (
            await workshop.PostAsync(
                $"nonconformities/{raised}/disposition",
                new
                {
                    kind = "scrap",
                    reason = "torn",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);
    }

    private static async Task RefusedAsync(Task insert, string index)
    {
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => insert);
        Assert.Equal((PostgresErrorCodes.UniqueViolation, index), (refusal.SqlState, refusal.ConstraintName));
    }
}
