using Traceability.Persistence.Book;

namespace Traceability.Web.Tests.Storage;

/// <summary>
/// The rows that film lots are counted from: kept with the facts, checked against them, and made for facts that came past the record book.
/// </summary>
[Trait("Category", "Storage")]
public sealed class FilmFateTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string OfDiaphragm = "diaphragm_id = (select id from parts where serial = '#')";

    [Theory]
    [InlineData("delete from film_fates where " + OfDiaphragm, "another fate of #")]
    [InlineData("update film_fates set failed_at = array[now()] where " + OfDiaphragm, "another fate of #")]
    [InlineData("update film_fates set since = since - interval '1 day' where " + OfDiaphragm, "another fate of #")]
    [InlineData("update film_fates set path_id = gen_random_uuid() where " + OfDiaphragm, "another fate of #")]
    [InlineData(
        "insert into film_fates select diaphragm_id, (select id from lots where number = '"
            + Workshop.Ring
            + "'), since, model, fitted_by, path_id, null from film_fates where "
            + OfDiaphragm,
        "another fate of #"
    )]
    public async Task A_wrong_row_is_named_and_mended(string damage, string named)
    {
        var serial = await workshop.MountAsync();
        await using var door = BackDoor.Of(workshop);
        var right = await door.RowsAsync();
        Assert.Equal(1, await door.RunAsync(Of(damage, serial)));

        await using var health = new HealthCheck(workshop);
        Assert.Contains(Of(named, serial), Assert.Single(await health.DerivedAsync(mend: false)), StringComparison.Ordinal);
        Assert.NotEqual(right, await door.RowsAsync());
        Assert.Single(await health.DerivedAsync(mend: true));
        Assert.Empty(await health.DerivedAsync(mend: false));
        Assert.Equal(right, await door.RowsAsync());
    }

    [Fact]
    public async Task A_path_whose_body_was_changed_is_found_and_mended()
    {
        var serial = await workshop.MountAsync();
        await using var door = BackDoor.Of(workshop);
        Assert.Equal(
            1,
            await door.RunAsync(
                $$"""update film_paths set body = body || '{"shipped": true}' """
                    + $$"""where id = (select path_id from film_fates where {{Of(OfDiaphragm, serial)}})"""
            )
        );
        await using var health = new HealthCheck(workshop);
        Assert.Contains(await health.DerivedAsync(mend: false), d => d.Contains($"another fate of {serial}", StringComparison.Ordinal));
        Assert.NotEmpty(await health.DerivedAsync(mend: true));
        Assert.Empty(await health.DerivedAsync(mend: false));
    }

    [Fact]
    public async Task Films_whose_facts_came_past_the_record_book_are_followed()
    {
        await workshop.UnitAsync();
        await using var door = BackDoor.Of(workshop);
        var right = await door.RowsAsync();
        foreach (var table in new[] { "film_fates", "film_paths" })
        {
            Assert.True(await door.RunAsync($"delete from {table}") > 0);
        }

        await using var health = new HealthCheck(workshop);
        await FilmFates.FillAsync(health.Db, default);
        Assert.Equal(right, await door.RowsAsync());
        Assert.Empty(await health.DerivedAsync(mend: false));
    }

    [Fact]
    public async Task A_diaphragm_that_changed_its_capsule_has_been_in_both()
    {
        string front = await workshop.DiaphragmAsync(),
            first = await workshop.CapsuleAsync(front);
        (await workshop.PostAsync($"parts/{first}/removals", new { position = "front", reason = "noisy" })).Expect(201);
        _ = await workshop.CapsuleAsync(front);
        await using var door = BackDoor.Of(workshop);
        Assert.Equal(
            2,
            await door.AskAsync<int>(
                "select jsonb_array_length(p.body -> 'reached') from film_fates f join film_paths p on p.id = f.path_id where"
                    + $" {Of(OfDiaphragm, front)}"
            )
        );
        await using var health = new HealthCheck(workshop);
        await health.PassAsync();
    }

    /// <summary>
    /// Both commands are held up where they are about to follow the film, then let go: the second must see what the first wrote.
    /// </summary>
    [Fact]
    public async Task A_film_that_two_commands_touch_at_once_is_followed_with_the_facts_of_both()
    {
        string front = await workshop.DiaphragmAsync(),
            capsule = await workshop.CapsuleAsync(front);
        await using var door = BackDoor.Of(workshop);
        Task<Reply[]> both;
        await using (await door.HoldAsync($"select from film_fates where {Of(OfDiaphragm, front)} for update"))
        {
            both = Task.WhenAll(
                new[] { front, capsule }.Select(serial =>
                    workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "scratched", description = "scratched" })
                )
            );
            while (
                await door.AskAsync<long>(
                    "select count(*) from pg_stat_activity where wait_event_type = 'Lock' and datname = current_database()"
                ) < 2
            )
            {
                Assert.False(both.IsCompleted);
                await Task.Delay(20);
            }
        }

        Assert.All(await both, answer => answer.Expect(201));
        Assert.Equal(2, await door.AskAsync<int>($"select cardinality(failed_at) from film_fates where {Of(OfDiaphragm, front)}"));
        await using var health = new HealthCheck(workshop);
        Assert.Empty(await health.DerivedAsync(mend: false));
    }

    private static string Of(string text, string serial) => text.Replace("#", serial, StringComparison.Ordinal);
}
