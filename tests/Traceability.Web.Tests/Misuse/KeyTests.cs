using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Misuse;

public sealed class KeyTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Eight_times_the_same_command_at_once_is_written_once_and_answered_alike()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await using var door = BackDoor.Of(workshop);
        var before = await door.RowsAsync();
        var replies = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => MountAsync(serial, "key-eight"))));
        var answer = Assert.Single(replies.Select(r => r.Body).Distinct());
        Assert.All(replies, r => r.Expect(201));
        var after = await door.RowsAsync();
        Assert.Equal(
            (1, 1, 1),
            (
                after["attempts"] - before["attempts"],
                after["idempotent_answers"] - before["idempotent_answers"],
                after["ledger_entries"] - before["ledger_entries"]
            )
        );

        await door.UntouchedByAsync(async () => Assert.Equal(answer, (await MountAsync(serial, "key-eight")).Body));
    }

    [Theory]
    [InlineData("850", "851")]
    [InlineData("850", "850.0")]
    public async Task The_same_key_with_another_body_is_refused(string first, string second)
    {
        var (serial, key) = (await workshop.RegisterAsync("diaphragm"), $"key-{first}-{second}");
        (await MountAsync(serial, key, first)).Expect(201);
        await using var door = BackDoor.Of(workshop);
        await door.UntouchedByAsync(async () =>
            Assert.Contains(
                "came before with another request",
                (await MountAsync(serial, key, second)).Problem(422),
                StringComparison.Ordinal
            )
        );
    }

    [Fact]
    public async Task The_same_key_for_another_part_is_refused()
    {
        (await MountAsync(await workshop.RegisterAsync("diaphragm"), "key-part")).Expect(201);
        var other = await workshop.RegisterAsync("diaphragm");
        (await MountAsync(other, "key-part")).Expect(422);
        Assert.Equal("ready", await workshop.StateOfAsync(other));
    }

    [Fact]
    public async Task The_same_key_by_another_person_is_another_key_and_not_answered_with_what_the_first_was_told()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        (await MountAsync(serial, "key-person")).Expect(201);
        (await MountAsync(serial, "key-person", badge: Workshop.OtherBuilder)).Expect(409);
        (await MountAsync(await workshop.RegisterAsync("diaphragm"), "key-person", badge: Workshop.OtherBuilder)).Expect(201);
    }

    [Fact]
    public async Task A_refusal_is_not_kept_so_that_the_same_command_succeeds_once_its_reason_is_gone()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var hold = (await workshop.PostAsync("holds", new { part = serial, reason = "look" }, Workshop.Quality)).Expect(201).Id();
        (await MountAsync(serial, "key-later")).Expect(409);
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "looked" }, Workshop.Quality)).Expect(201);
        (await MountAsync(serial, "key-later")).Expect(201);
    }

    [Fact]
    public async Task A_key_is_of_a_sensible_length()
    {
        (await MountAsync(await workshop.RegisterAsync("diaphragm"), new string('k', 201))).Expect(400);
        (await MountAsync(await workshop.RegisterAsync("diaphragm"), new string('k', 200))).Expect(201);
    }

    [Fact]
    public async Task A_file_under_the_same_key_is_kept_once()
    {
        var load = (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { await workshop.MountAsync() },
                }
            )
        ).Expect(201).Id();
        var log = workshop.LogOfNow();
        var first = await workshop.PostAsync($"loads/{load}/log", Workshop.Csv(log), key: "key-log");
        Assert.Equal(
            first.Expect(201).Id(),
            (await workshop.PostAsync($"loads/{load}/log", Workshop.Csv(log), key: "key-log")).Expect(201).Id()
        );
        (await workshop.PostAsync($"loads/{load}/log", Workshop.Csv(log + "# more\n"), key: "key-log")).Expect(422);
        Assert.Single((await workshop.GetAsync($"loads/{load}")).Expect(200).List("evidence"));
    }

    private Task<Reply> MountAsync(string serial, string key, string value = "850", string badge = Workshop.Builder) =>
        workshop.PostAsync(
            $"parts/{serial}/records",
            new
            {
                stage = "mount",
                station = "BENCH-1",
                readings = new[] { new { characteristic = "coarseHz", value } },
                fittings = new[] { new { position = "film", lot = Workshop.Film } },
            },
            badge,
            key
        );
}
